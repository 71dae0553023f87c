export interface TypedIdentity {
  readonly name: string;
  readonly email: string;
  readonly telephone: string;
}

/** What of a form tells who is meant. */
export function typedIdentity(form: FormData): TypedIdentity {
  const said = (key: string): string => String(form.get(key) ?? '');
  return { name: said('name'), email: said('email'), telephone: said('telephone') };
}
