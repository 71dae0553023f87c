import { describe, expect, it } from 'vitest';
import { siteKey, tagKey } from '#lib/found/valve-identity.ts';

describe('identity of a valve', () => {
  it.each([
    ['V-101', 'v 101'],
    ['V101', 'V–101'],
    ['12-GV-0007', '12 gv.0007'],
    ['SV/101/A', 'sv101a'],
  ])('%s and %s are one valve', (one, other) => {
    expect(tagKey(one)).toBe(tagKey(other));
  });

  it.each([
    ['1-01', '10-1'],
    ['V-1', 'V-01'],
    ['V-101', 'V-1010'],
    ['V-101A', 'V-101B'],
    ['GV-7', 'VG-7'],
  ])('%s and %s are two', (one, other) => {
    expect(tagKey(one)).not.toBe(tagKey(other));
  });

  it('is empty where nothing names the valve or the site', () => {
    expect([tagKey(' - '), tagKey(''), siteKey(' , ')]).toEqual(['', '', '']);
  });

  it('takes a site as the same however it is written', () => {
    expect(siteKey('Sallow Vale, east district')).toBe(siteKey('SALLOW VALE (East  District)'));
    expect(siteKey('Sallow Vale, east district')).not.toBe(siteKey('Sallow Vale, west district'));
  });
});
