import styles from '#app/_ui/plan/plan-sheet.module.css';
import { ShownQuantity, ShownRange, ShownSource } from '#app/_ui/shown-units.client.tsx';
import type { LineDetail } from '#lib/services/lines/open-line.ts';

type Steps = LineDetail['duty']['steps'];

/** Every step of the calculation, so that it can be done again by hand. */
export function LineSteps({ title, steps }: { readonly title: string; readonly steps: Steps }) {
  return (
    <details>
      <summary>
        {title} ({steps.length} {steps.length === 1 ? 'step' : 'steps'})
      </summary>
      <ol className={styles.list}>
        {steps.map((step, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step may come twice, and the order is the calculation's own
          <li key={`${step.id} ${index}`}>
            <strong>{step.name}</strong>: <ShownRange known={step.result} />{' '}
            <span className={styles.basis}>
              {step.result.basis}; <ShownSource source={step.source} />
            </span>
            {step.formula === '' ? null : <div className={styles.formula}>{step.formula}</div>}
            {step.inputs.length === 0 ? null : (
              <ul className={styles.soft}>
                {step.inputs.map((input) => (
                  <li key={`${input.symbol} ${input.name}`}>
                    {input.symbol} = <ShownQuantity value={input.low} unit={input.unit} />
                    {input.low === input.high ? null : (
                      <>
                        {' to '}
                        <ShownQuantity value={input.high} unit={input.unit} />
                      </>
                    )}
                    : {input.name} ({input.basis}; <ShownSource source={input.source} />)
                  </li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ol>
    </details>
  );
}
