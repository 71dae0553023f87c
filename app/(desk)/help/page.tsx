import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import { FieldHelpSheet } from '#app/_ui/field-help-sheet.tsx';
import { PrintButton } from '#app/_ui/print-button.client.tsx';
import { fieldGuide } from '#lib/services/lines/field-guide.ts';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Measuring' };

/** The field guide: every field with its drawing; printed, it goes with the crew. */
export default async function HelpPage() {
  const guide = fieldGuide(await asking());
  if (!guide.ok) return <p className="notice refusal">{guide.reason.sentence}</p>;
  return (
    <>
      <div className="heading">
        <h1>How to measure on the valve</h1>
        <PrintButton>Print the field guide</PrintButton>
      </div>
      <p>
        All that a list or a site can say: what it is, how to measure it, and what it costs not to know it. Whatever is
        left blank widens a range; nothing is refused for it.
      </p>
      <p className="notice warning">
        <strong>First of all.</strong> Isolation, permits, confined-space, hazardous-area and traffic rules of the place
        come before any measuring. Local codes, the valve maker’s data and licensed or competent persons decide.
      </p>
      <nav className="guide-index no-print" aria-label="Parts of the guide">
        {guide.value.map(({ title }) => (
          <a key={title} href={`#${anchorOf(title)}`}>
            {title}
          </a>
        ))}
      </nav>
      {guide.value.map(({ title, fields }) => (
        <section key={title} aria-labelledby={anchorOf(title)}>
          <h2 id={anchorOf(title)}>{title}</h2>
          <div className="guide">
            {fields.map((help) => (
              <article className="card" key={help.field} id={help.field}>
                <h3>
                  {help.label}
                  {help.example !== '' && <span className="soft">such as {help.example}</span>}
                </h3>
                <FieldHelpSheet help={help} id={`guide-${help.field}`} />
              </article>
            ))}
          </div>
        </section>
      ))}
    </>
  );
}

function anchorOf(title: string): string {
  return `part-${title.toLowerCase().replace(/[^a-z]+/g, '-')}`;
}
