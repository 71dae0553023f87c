import type { ReactNode } from 'react';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import { ShownMoney, ShownWords } from '#app/_ui/shown-forms.client.tsx';
import { ShownSource } from '#app/_ui/shown-units.client.tsx';
import type { PlanView } from '#lib/services/plans/plan-view.ts';

type Price = NonNullable<PlanView['price']>;
type Money = (amount: number) => ReactNode;

/** Every priced line with how it came about, tax by category, totals. */
export function PriceLines({ price }: { readonly price: Price }) {
  const money: Money = (amount) => (
    <>
      <ShownMoney minor={amount} currency={price.currency} /> {price.currency}
    </>
  );
  return (
    <PlanWide label="Lines of the price">
      <table className={styles.table}>
        <caption>
          {price.days} {price.days === 1 ? 'day' : 'days'} of hire. Each line is rounded; tax is worked out once for
          each category.
        </caption>
        <PriceHead />
        <tbody>
          {price.lines.map((line, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two lines may say the same, and their order is the price's own
            <PriceLine key={`${line.kind} ${line.number} ${index}`} line={line} money={money} />
          ))}
        </tbody>
        <PriceTotals price={price} money={money} />
      </table>
    </PlanWide>
  );
}

function PriceHead() {
  return (
    <thead>
      <tr>
        <th scope="col" className={styles.number}>
          Quantity
        </th>
        <th scope="col">What</th>
        <th scope="col" className="wide-only">
          How it came about
        </th>
        <th scope="col">Tax</th>
        <th scope="col" className={styles.number}>
          Each
        </th>
        <th scope="col" className={styles.number}>
          Net
        </th>
      </tr>
    </thead>
  );
}

function PriceLine({ line, money }: { readonly line: Price['lines'][number]; readonly money: Money }) {
  return (
    <tr>
      <td className={styles.number}>
        <ShownWords>{String(line.quantity)}</ShownWords>
      </td>
      <th scope="row">
        {line.name}
        <br />
        <span className={styles.soft}>
          {line.kind}
          {line.number === '' ? '' : ` · ${line.number}`}
        </span>
        <span className={`${styles.how} narrow-only`}>
          <HowPriced line={line} />
        </span>
      </th>
      <td className={`${styles.sentence} wide-only`}>
        <HowPriced line={line} />
      </td>
      <td>{line.tax}</td>
      <td className={styles.number}>{money(line.unit_minor)}</td>
      <td className={styles.number}>{money(line.net_minor)}</td>
    </tr>
  );
}

/** Beside the name where there is room, below it where there is not. */
function HowPriced({ line }: { readonly line: Price['lines'][number] }) {
  return (
    <>
      <ShownSource source={line.sentence} />
      {line.purchase_after_days === null ? null : (
        <>
          <br />
          <span className={styles.soft}>Buying would have been cheaper after {line.purchase_after_days} days.</span>
        </>
      )}
    </>
  );
}

function PriceTotals({ price, money }: { readonly price: Price; readonly money: Money }) {
  return (
    <tfoot>
      <Total words="Net" amount={money(price.net_minor)} />
      {price.taxes.map((tax) => (
        <Total
          key={tax.code}
          words={
            <>
              {tax.name} ({tax.code}), <ShownWords>{String(tax.percent)}</ShownWords> % of {money(tax.taxable_minor)}
              {tax.reason === undefined ? '' : `: ${tax.reason}`}
            </>
          }
          amount={money(tax.tax_minor)}
        />
      ))}
      <Total words="Price with tax" amount={money(price.gross_minor)} />
      {price.deposit_minor > 0 ? <Total words="Deposit" amount={money(price.deposit_minor)} /> : null}
    </tfoot>
  );
}

function Total({ words, amount }: { readonly words: ReactNode; readonly amount: ReactNode }) {
  return (
    <tr>
      <th scope="row" colSpan={4}>
        {words}
      </th>
      <td className="wide-only" />
      <td className={styles.number}>{amount}</td>
    </tr>
  );
}
