/** What the first form gives back where it was refused, so that nothing has to be told again; nothing of it names a person. */
const GIVEN = ['what', 'driven_by', 'valve_type', 'size', 'condition', 'zone', 'starts_on', 'days', 'rows'] as const;

export type Given = Readonly<Partial<Record<(typeof GIVEN)[number], string>>>;

/** A longer text is pasted anew: an address holds no more. */
const MOST_CHARACTERS = 2_000;

export function givenBack(fields: Readonly<Record<string, string | readonly string[] | undefined>>): Given {
  return Object.fromEntries(
    GIVEN.flatMap((name) => {
      const text = fields[name];
      return typeof text === 'string' && text !== '' && text.length <= MOST_CHARACTERS ? [[name, text] as const] : [];
    }),
  );
}
