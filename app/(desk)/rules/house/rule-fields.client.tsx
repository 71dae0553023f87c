'use client';
import type { FieldTrouble } from '#app/_lib/send.client.tsx';
import type { HouseRuleJson } from '#lib/contracts/house.ts';
import type { RuleKindSpec } from '#lib/contracts/house-rule-values.ts';
import styles from '../../equipment/equipment.module.css';

interface RuleFieldsProps {
  readonly id: string;
  readonly rule: HouseRuleJson;
  readonly specs: readonly RuleKindSpec[];
  readonly mayChange: boolean;
  readonly problems: readonly FieldTrouble[];
  readonly onChange: (rule: HouseRuleJson) => void;
  readonly onRemove: () => void;
}

/** One house rule: what it is about, its value, its sentence, its source, and whether it holds. */
export function RuleFields({ id, rule, specs, mayChange, problems, onChange, onRemove }: RuleFieldsProps) {
  const spec = specs.find(({ kind }) => kind === rule.kind);
  if (!mayChange || spec === undefined) {
    return (
      <>
        <p>
          <strong>{rule.sentence}</strong> {rule.off ? <span className="mark">switched off</span> : null}
        </p>
        <p className="soft">
          {spec?.label}: {rule.value}. {rule.source ?? ''}
        </p>
      </>
    );
  }
  const chooseKind = (kind: string) => {
    const next = specs.find((one) => one.kind === kind);
    if (next !== undefined)
      onChange({ ...rule, kind: next.kind, value: next.choices[0] ?? '', sentence: next.sentence });
  };
  return (
    <>
      <div className="fields">
        <div className={styles.field}>
          <label htmlFor={`${id}-kind`}>What it is about</label>
          <select id={`${id}-kind`} value={rule.kind} onChange={(event) => chooseKind(event.target.value)}>
            {specs.map(({ kind, label }) => (
              <option key={kind} value={kind}>
                {label}
              </option>
            ))}
          </select>
          <span className={styles.hint}>{spec.help}</span>
        </div>
        <RuleValue id={id} rule={rule} spec={spec} onChange={onChange} />
        <RuleOrigin id={id} rule={rule} onChange={onChange} />
      </div>
      <div className={styles.field}>
        <label htmlFor={`${id}-sentence`}>Sentence, as screens and papers say it</label>
        <textarea
          id={`${id}-sentence`}
          rows={2}
          maxLength={300}
          value={rule.sentence}
          onChange={(event) => onChange({ ...rule, sentence: event.target.value })}
        />
      </div>
      {problems.map(({ path, sentence }) => (
        <p key={path} className={styles.trouble}>
          {sentence}
        </p>
      ))}
      <div className="tools">
        <label>
          <input
            type="checkbox"
            checked={rule.off !== true}
            onChange={(event) => {
              const { off: _old, ...rest } = rule;
              onChange(event.target.checked ? rest : { ...rest, off: true });
            }}
          />{' '}
          This rule holds
        </label>
        <button type="button" className="quiet small" onClick={onRemove}>
          Take the rule out
        </button>
      </div>
    </>
  );
}

function RuleOrigin({ id, rule, onChange }: Pick<RuleFieldsProps, 'id' | 'rule' | 'onChange'>) {
  return (
    <>
      <div className={styles.field}>
        <label htmlFor={`${id}-source`}>Source</label>
        <input
          id={`${id}-source`}
          value={rule.source ?? ''}
          maxLength={200}
          onChange={(event) => {
            const { source: _old, ...rest } = rule;
            const source = event.target.value;
            onChange(source === '' ? rest : { ...rest, source });
          }}
        />
        <span className={styles.hint}>Who asks for it, or where it was agreed.</span>
      </div>
      <div className={styles.field}>
        <label htmlFor={`${id}-id`}>Short name</label>
        <input
          id={`${id}-id`}
          value={rule.id}
          maxLength={60}
          onChange={(event) => onChange({ ...rule, id: event.target.value })}
        />
        <span className={styles.hint}>
          Small letters and hyphens. A customer or site that uses the same name replaces it.
        </span>
      </div>
    </>
  );
}

type RuleValueProps = Pick<RuleFieldsProps, 'id' | 'rule' | 'onChange'> & { readonly spec: RuleKindSpec };

function RuleValue({ id, rule, spec, onChange }: RuleValueProps) {
  const set = (value: string) => {
    const told = spec.number === null ? value : `${Number.parseFloat(value)} ${spec.number.unit}`;
    // The sentence to begin with follows the value until somebody writes one of their own.
    const before = spec.sentence.replace('…', toldValue(spec, rule.value));
    const isOwn = rule.sentence !== before && rule.sentence !== spec.sentence;
    onChange({ ...rule, value, sentence: isOwn ? rule.sentence : spec.sentence.replace('…', told) });
  };
  return (
    <div className={styles.field}>
      <label htmlFor={`${id}-value`}>
        Value
        {spec.number === null ? null : <span className={styles.unit}> {spec.number.unit}</span>}
      </label>
      {spec.choices.length > 0 ? (
        <select id={`${id}-value`} value={rule.value} onChange={(event) => set(event.target.value)}>
          {spec.choices.map((choice) => (
            <option key={choice}>{choice}</option>
          ))}
        </select>
      ) : (
        <input
          id={`${id}-value`}
          inputMode="decimal"
          value={rule.value}
          onChange={(event) => set(event.target.value)}
        />
      )}
      <span className={styles.hint}>
        {spec.number === null ? '' : `From ${spec.number.low} to ${spec.number.high}.`}
      </span>
    </div>
  );
}

function toldValue(spec: RuleKindSpec, value: string): string {
  return spec.number === null ? value : `${Number.parseFloat(value)} ${spec.number.unit}`;
}
