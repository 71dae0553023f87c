import { hirePaths } from '#app/_lib/hire-paths.ts';
import type { OrderView } from '#lib/services/self-service/order-view.ts';
import { dayIn } from '#lib/wording/forms.ts';
import type { Language } from '#lib/wording/language.ts';
import { say } from '#lib/wording/wording.ts';
import formLook from './form.module.css';
import { Choice, Field } from './frame-blocks.tsx';
import sheetLook from './sheet.module.css';

interface SheetProps {
  readonly order: OrderView;
  readonly token: string;
  readonly language: Language;
}

export function PlaceSheet({ order, token, language }: SheetProps) {
  const { name = '', startsOn, days, zone, vehicleAccess, enclosed } = order.site;
  const dates = say(language, days === 1 ? 'order.dates-one' : 'order.dates', {
    date: dayIn(language, startsOn),
    days,
  });
  if (!order.mayChange) {
    // Of what is booked the days stand with the booking: they may have grown.
    const told = order.stage === 'accepted' ? name : `${name} ${dates}`;
    return told === '' ? null : (
      <p className="soft">
        {say(language, 'order.place')}: {told}
      </p>
    );
  }
  const yesNo = [
    { value: 'yes', words: say(language, 'choice.yes') },
    { value: 'no', words: say(language, 'choice.no') },
  ];
  const asked = [
    { key: 'vehicle_access', legend: say(language, 'order.vehicle'), chosen: vehicleAccess },
    { key: 'enclosed', legend: say(language, 'order.enclosed'), chosen: enclosed },
  ];
  const unknown = { value: '', words: say(language, 'answer.unknown') };
  return (
    <details className={sheetLook.sheet}>
      <summary className={sheetLook.summary}>
        {say(language, 'order.place')}: {dates}
      </summary>
      <form method="post" action={hirePaths.deed(token, 'place')}>
        <Field name="place-name" label={say(language, 'start.place')}>
          <input id="place-name" name="name" maxLength={120} defaultValue={name} />
        </Field>
        <div className={formLook.pair}>
          <Field name="place-start" label={say(language, 'start.when')}>
            <input id="place-start" name="starts_on" type="date" required defaultValue={startsOn} />
          </Field>
          <Field name="place-days" label={say(language, 'start.days')}>
            <input id="place-days" name="days" type="number" min={1} max={60} required defaultValue={days} />
          </Field>
        </div>
        <Choice
          name="zone"
          legend={say(language, 'start.zone')}
          chosen={zone === undefined ? '' : zone}
          options={[
            { value: 'none', words: say(language, 'choice.no') },
            { value: '2', words: say(language, 'choice.2') },
            { value: '1', words: say(language, 'choice.1') },
            unknown,
          ]}
        />
        {asked.map(({ key, legend, chosen }) => (
          <Choice
            key={key}
            name={key}
            legend={legend}
            chosen={chosen === undefined ? '' : chosen ? 'yes' : 'no'}
            options={[...yesNo, unknown]}
          />
        ))}
        <button type="submit" className={`button ${formLook.wide}`}>
          {say(language, 'order.place-save')}
        </button>
      </form>
    </details>
  );
}
