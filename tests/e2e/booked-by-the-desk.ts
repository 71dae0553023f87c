import { execFileSync } from 'node:child_process';
import type { APIRequestContext, Browser, Page } from '@playwright/test';
import type { UserRole } from '#lib/services/context.ts';
import { PEOPLE } from '#tests/support/houses/people.ts';
import { dayIn } from './days.ts';
import { expect, PASSWORD, patient } from './signed-in.ts';

interface Beside {
  readonly browser: Browser;
  readonly baseURL: string | undefined;
  readonly role: UserRole;
}

/** Another person's own session and screen beside that of the person the story is about. */
export async function personBeside({ browser, baseURL, role }: Beside): Promise<Page> {
  const context = await browser.newContext({ baseURL: baseURL ?? '', storageState: { cookies: [], origins: [] } });
  const page = patient(await context.newPage());
  await page.goto('/sign-in');
  await page.getByLabel('Email').fill(PEOPLE[role].email);
  await page.getByLabel('Password').fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page).not.toHaveURL(/sign-in/);
  return page;
}

/** An enquiry of two buried valves, planned, quoted, accepted and confirmed; answers the number of its booking. */
export async function bookedByTheDesk(request: APIRequestContext, title: string): Promise<string> {
  return bookedFor(request, { title, site: {} });
}

/** The same for a hire that begins today: it stands on the walk of the day. */
export async function bookedForToday(request: APIRequestContext, title: string): Promise<string> {
  return bookedFor(request, { title, site: { starts_on: dayIn(0) } });
}

interface Booking {
  readonly title: string;
  readonly site: Readonly<Record<string, unknown>>;
}

async function bookedFor(request: APIRequestContext, { title, site: own }: Booking): Promise<string> {
  const site = { sources_allowed: ['battery'], mains_voltage: 230, mains_plug: 'CEE 7/7', crews: 1, days: 2, ...own };
  const made = await request.post('/api/v1/enquiries', {
    data: { title, customer: { name: 'Tern Weir Trust' }, site },
  });
  const { id } = await made.json();
  const lines = [
    { cells: { tag: 'V1', valve_type: 'gate', size: 'DN 100', driven_by: 'key cap', depth_to_nut: '0.9 m' } },
    { cells: { tag: 'V2', valve_type: 'gate', size: 'DN 200', driven_by: 'key cap', depth_to_nut: '1.2 m' } },
  ];
  await request.post(`/api/v1/enquiries/${id}/lines`, { data: { lines } });
  await request.post(`/api/v1/enquiries/${id}/plan`);
  await expect
    .poll(async () => (await (await request.get(`/api/v1/enquiries/${id}/plan`)).json()).kind, { timeout: 120_000 })
    .toBe('ready');
  const quote = await (await request.post(`/api/v1/enquiries/${id}/quotes`, { data: {} })).json();
  const accepted = await request.post(`/api/v1/quotes/${quote.id}/accept`, { data: { acceptedBy: 'R. Dunlin' } });
  const { number } = await accepted.json();
  await request.post(`/api/v1/yard/bookings/${number}/confirm`);
  return number;
}

/** All of a booking picked by the yard's own services: for a story that begins at the gate. */
export function pickedByTheYard(number: string): void {
  execFileSync(process.execPath, ['--import', 'tsx', 'tests/support/houses/pick-booking.ts', number], {
    stdio: 'pipe',
  });
}
