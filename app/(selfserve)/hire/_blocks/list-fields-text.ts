const NAME = /^column-(\d{1,3})$/;

/** What each column of a list is to be taken for, as a form says it. */
export function fieldsIn(form: FormData): ReadonlyMap<number, string> {
  return new Map(
    [...form.entries()].flatMap(([name, value]) => {
      const index = NAME.exec(name)?.[1];
      return index === undefined || typeof value !== 'string' ? [] : [[Number(index), value.slice(0, 60)] as const];
    }),
  );
}

/** The same in an address: `0.tag-2.size`. */
export function fieldsText(fields: ReadonlyMap<number, string>): string {
  return [...fields].map(([index, field]) => `${index}.${field}`).join('-');
}

export function fieldsOf(text: string): ReadonlyMap<number, string> {
  return new Map(
    text.split('-').flatMap((part) => {
      const [, index, field] = /^(\d{1,3})\.([a-z_]{1,60})$/.exec(part) ?? [];
      return index === undefined || field === undefined ? [] : [[Number(index), field] as const];
    }),
  );
}
