/*
 * The demo house as plain data: models, units, house facts, customers and enquiries.
 * Invariant: everything in it is invented; reading it changes nothing.
 * Not here: writing it into the database (lib/services/prepare-house.ts).
 * Read next: units.ts, equipment/.
 */
import { readFileSync } from 'node:fs';
import { parseModels } from '#lib/contracts/equipment.ts';
import type { Model } from '#lib/equipment/model.ts';
import { invariant } from '#lib/kernel/invariant.ts';

const EQUIPMENT_FILES = ['drives', 'heads', 'adapters', 'extensions', 'restraints', 'options', 'accessories'] as const;

export function demoModels(): readonly Model[] {
  const entries = EQUIPMENT_FILES.flatMap((name) => readEntries(`equipment/${name}.json`));
  const parsed = parseModels(entries);
  invariant(parsed.ok, parsed.ok ? '' : parsed.reason.sentence);
  return parsed.value;
}

function readEntries(path: string): readonly unknown[] {
  const json: unknown = JSON.parse(readText(path));
  invariant(Array.isArray(json), `seeds/${path} holds a list.`);
  return json;
}

function readText(path: string): string {
  return readFileSync(new URL(path, import.meta.url), 'utf8');
}
