/** Cases that together show every kind of restraint, head, adapter, extension, option and energy source. */
import type { DriveLineSubject } from '#lib/documents/drawings/drive-line-words.ts';
import { exactly, fact, known } from '#lib/units/known-value.ts';
import { sampleAssembly, sampleDuty, sampleLine } from './sample-duty.ts';
import { SAMPLE_MODELS } from './sample-models.ts';

const stated = { basis: 'stated' as const, source: 'Customer list.' };
const numberOf = (kind: string) =>
  SAMPLE_MODELS.find((model) => model.role === 'restraint' && model.facts.kind === kind)?.number ?? 'R-000';
const dish = { wheelDish: exactly('°', 15, stated) };
const rising = {
  stemRisesThroughWheel: 'yes' as const,
  stemProtrusion: known('m', { low: 0.2, nominal: 0.28, high: 0.3 }, stated),
};
const buried = {
  kind: 'nut' as const,
  nutShape: 'tapered square',
  nutSizes: [exactly('m', 0.032, stated)],
  depthToNut: known('m', { low: 1.1, nominal: 1.25, high: 1.4 }, stated),
};
const bare = {
  kind: 'nut' as const,
  nutShape: 'square',
  nutSizes: [exactly('m', 0.027, stated), exactly('m', 0.032, stated)],
};

function drawn(
  name: string,
  duty: Parameters<typeof sampleDuty>[0],
  parts: Parameters<typeof sampleAssembly>[1],
  line: Parameters<typeof sampleLine>[1] = {},
): { readonly name: string; readonly subject: DriveLineSubject } {
  const valve = sampleDuty(duty);
  return {
    name,
    subject: {
      duty: valve,
      line: sampleLine(duty.tag, line),
      assembly: sampleAssembly(valve, parts),
      models: SAMPLE_MODELS,
      system: 'si',
    },
  };
}

export const PICTURE_CASES = [
  drawn(
    'chain, right-angle, self-centring',
    { tag: 'GV-101' },
    {
      restraint: numberOf('reaction arm with chain'),
      accessories: [
        { number: 'S-156', count: 2 },
        { number: 'S-171', count: 1 },
      ],
    },
  ),
  drawn(
    'strap, inline, peg plate, air',
    { tag: 'GV-102' },
    {
      drive: 'D-231',
      head: 'H-118',
      adapters: ['W-105', 'W-117'],
      restraint: numberOf('reaction arm with strap'),
      options: ['L-109'],
    },
  ),
  drawn(
    'fixed bar, inline, spoke driver dished',
    { tag: 'GV-103', grip: dish },
    { head: 'H-118', adapters: ['W-123'], extensions: ['E-112'], restraint: numberOf('reaction arm with fixed bar') },
  ),
  drawn(
    'twin-point, open-centre, bolt-on',
    { tag: 'GV-104', grip: rising },
    { head: 'H-134', adapters: ['W-141'], restraint: numberOf('twin-point arm') },
  ),
  drawn(
    'yoke clamp, open-centre, dished',
    { tag: 'GV-105', grip: { ...rising, ...dish } },
    { drive: 'D-231', head: 'H-134', adapters: ['W-123'], restraint: numberOf('yoke clamp') },
  ),
  drawn(
    'tow-bar, right-angle, petrol',
    { tag: 'GV-106', closes: 'anticlockwise' },
    { drive: 'D-247', adapters: ['W-105'], restraint: numberOf('tow-bar brace') },
  ),
  drawn(
    'ground plate, inline, geared',
    { tag: 'BV-107', movement: 'geared' },
    { head: 'H-118', adapters: ['W-117'], restraint: numberOf('ground plate') },
  ),
  drawn(
    'two-leg prop, inline, nut socket',
    { tag: 'GV-108', grip: bare, closes: 'unknown' },
    { head: 'H-118', adapters: ['N-108'], restraint: numberOf('two-leg prop') },
  ),
  drawn(
    'street stand, key in the ground',
    { tag: 'SV-109', grip: buried },
    {
      head: 'H-118',
      adapters: ['N-122'],
      restraint: numberOf('street stand'),
      options: ['C-102'],
      accessories: [{ number: 'S-183', count: 1 }],
    },
    { place: { surfaceBox: fact('round, cast iron, lid free', stated) } },
  ),
  drawn(
    'purpose-made, joint, socket',
    { tag: 'GV-110', grip: bare },
    {
      head: 'H-126',
      adapters: ['N-108'],
      extensions: ['E-112', 'E-140'],
      restraint: numberOf('purpose-made restraint'),
    },
    { place: { misalignment: exactly('°', 14, stated) } },
  ),
  drawn(
    'wheel faces side, open-centre',
    { tag: 'GV-111', grip: rising },
    { head: 'H-134', adapters: ['W-141'], restraint: numberOf('yoke clamp') },
    { place: { faces: fact('side', stated) } },
  ),
  drawn(
    'ground plate, key and joint, tow vehicle far',
    { tag: 'SV-112', grip: buried },
    { drive: 'D-247', head: 'H-126', adapters: ['N-122'], extensions: ['E-140'], restraint: numberOf('ground plate') },
  ),
  drawn(
    'socket and shaft down a chamber, tow-bar',
    { tag: 'SV-113', grip: buried },
    { head: 'H-126', adapters: ['N-108'], extensions: ['E-112', 'E-112'], restraint: numberOf('tow-bar brace') },
  ),
] as const;
