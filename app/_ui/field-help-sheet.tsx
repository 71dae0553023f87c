import type { FieldHelp } from '#lib/services/lines/field-guide.ts';
import { DrawingShapes } from './drawing-shapes.tsx';

/** What is said of one field: on the sheet that a question mark opens, and on the page that lists them all. */
export function FieldHelpSheet({ help, id }: { readonly help: FieldHelp; readonly id: string }) {
  const { what, measure, unknown, widens, caution, picture } = help;
  return (
    <>
      <p>{what}</p>
      {picture !== null && (
        <figure className="field-picture">
          <svg viewBox={`0 0 ${picture.width} ${picture.height}`} role="img" aria-labelledby={`${id}-told`}>
            <title id={`${id}-told`}>{picture.description}</title>
            <DrawingShapes shapes={picture.shapes} />
          </svg>
        </figure>
      )}
      <dl>
        <dt>How to measure it</dt>
        <dd>
          {measure.length === 1 ? (
            measure[0]
          ) : (
            <ol>
              {measure.map((step) => (
                <li key={step}>{step}</li>
              ))}
            </ol>
          )}
        </dd>
        <dt>What not knowing it costs</dt>
        <dd>
          {unknown} What grows wider: {widens.join('; ')}.
        </dd>
      </dl>
      {caution !== null && (
        <p className="notice warning">
          <strong>Caution.</strong> {caution}
        </p>
      )}
    </>
  );
}
