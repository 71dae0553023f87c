/*
 * What a browser or another system may send about customers, their sites and contacts.
 * Invariant: nothing reaches a use case that has not passed one of these.
 * Not here: enquiries (requests.ts, enquiry-requests.ts).
 * Read next: customer.ts, site.ts.
 */
import { z } from 'zod';
import { customerFactsSchema } from './customer.ts';

const id = z.number().int().positive();
const version = z.number().int().positive();
const name = z.string().trim().max(200);
const line = z.string().trim().max(200).default('');
const words = z.string().trim().max(2000).default('');

export const customerEntrySchema = z
  .strictObject({ name, facts: customerFactsSchema })
  .meta({ id: 'CustomerEntry', description: 'A new customer: its name, where papers go, and what is agreed.' });

export const customerEditSchema = z
  .strictObject({ version, name: name.optional(), facts: z.record(z.string(), z.unknown()).optional() })
  .meta({ id: 'CustomerEdit', description: 'What changes of a customer; facts that are left out stay as they are.' });

export const siteEntrySchema = z
  .strictObject({ name, address: words, access_note: words, facts: z.record(z.string(), z.unknown()).default({}) })
  .meta({ id: 'SiteEntry', description: 'A place of a customer with the facts that hold there for every job.' });

export const siteRecordEditSchema = siteEntrySchema.extend({ version }).meta({ id: 'SiteRecordEdit' });

export const contactEntrySchema = z
  .strictObject({
    name,
    site_id: id.nullable().default(null),
    position: line,
    email: line,
    telephone: line,
    note: words,
  })
  .meta({ id: 'ContactEntry', description: 'A person at a customer.' });

export const contactEditSchema = contactEntrySchema.extend({ version }).meta({ id: 'ContactEdit' });

export const putAwaySchema = z
  .strictObject({ archived: z.enum(['yes', 'no']) })
  .meta({ id: 'PutAway', description: 'Whether a customer, site or contact is put away.' });
