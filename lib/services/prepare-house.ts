/*
 * Makes the house ready for use: migrates the database and loads the demo house once.
 * Invariant: a second call changes nothing.
 * Not here: finding the database file (lib/launch/prepare-database.ts).
 * Read next: ../../db/.
 */
export async function prepareHouse(input: { readonly databasePath: string }): Promise<void> {
  throw new Error(`The database at ${input.databasePath} cannot be prepared yet: this part of the house is not built.`);
}
