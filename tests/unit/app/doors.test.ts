import { describe, expect, it } from 'vitest';
import { placeInside } from '#app/_lib/open-paths.ts';
import { isFromElsewhere } from '#app/_lib/same-origin.ts';

describe('after signing in one goes on', () => {
  it.each(['/enquiries', '/enquiries?state=all&page=2', '/users/1'])('to %s inside the house', (to) => {
    expect(placeInside(to)).toBe(to);
  });

  it.each([
    'https://elsewhere.example/',
    '//elsewhere.example/',
    '/\\elsewhere.example/',
    '/\t/elsewhere.example/',
    'javascript:alert(1)',
    '/api/v1/enquiries',
    '/sign-in?to=/x',
    '',
    undefined,
    ['/enquiries'],
  ])('never to %s', (to) => {
    expect(placeInside(to)).toBe('/');
  });
});

describe('a change that another site asks for', () => {
  const asks = (method: string, headers: Readonly<Record<string, string>>) =>
    isFromElsewhere({ method, headers: new Headers({ host: 'house.example:3000', ...headers }) });

  it.each([
    [{ origin: 'http://elsewhere.example' }],
    [{ origin: 'http://house.example:4000' }],
    [{ origin: 'null' }],
    [{ 'sec-fetch-site': 'cross-site' }],
    [{ 'sec-fetch-site': 'same-site', origin: 'http://house.example:3000' }],
  ])('is known by %o', (headers) => {
    expect(asks('POST', headers)).toBe(true);
    expect(asks('DELETE', headers)).toBe(true);
    expect(asks('GET', headers)).toBe(false);
  });

  it('is not seen in one of the house, at whatever address it answers, nor in a program that is no browser', () => {
    expect(asks('POST', { origin: 'http://house.example:3000', 'sec-fetch-site': 'same-origin' })).toBe(false);
    expect(asks('POST', { origin: 'http://192.0.2.4:3000', host: '192.0.2.4:3000' })).toBe(false);
    expect(asks('PATCH', {})).toBe(false);
  });
});
