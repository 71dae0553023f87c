/*
 * Holds an assembly against the place: power source, zone, enclosure, temperature, altitude, noise, room, facing and house rules.
 * Invariant: what the line says of its place goes before what the site says; silence about a zone means no zone, as everywhere in the tool.
 * Not here: the grip on wheel or nut (check-grip.ts).
 * Read next: check-grip.ts.
 */
import type { HouseRule } from '#lib/duty/site.ts';
import { DUTY_CLASSES } from '#lib/equipment/drive.ts';
import type { Model, RestraintModel } from '#lib/equipment/model.ts';
import type { Subject } from './chain.ts';
import { atMost, type Discrepancy, holds } from './discrepancy.ts';
import { isOutsideZones, mayStand } from './plate-check.ts';

export function checkPlace(subject: Subject): readonly Discrepancy[] {
  return [
    ...checkSource(subject),
    ...checkMarkings(subject),
    ...checkRoom(subject),
    ...checkHouseRules(subject),
    ...checkLine(subject),
  ];
}

function zoneOf({ lineDuty, site }: Subject): string {
  return lineDuty.line.place.zone?.value ?? site.zone ?? 'none';
}

function checkSource(subject: Subject): readonly Discrepancy[] {
  const { chain, site, lineDuty } = subject;
  const { facts, number } = chain.drive;
  const source = facts.power.kind;
  const inZone = !isOutsideZones(zoneOf(subject));
  const enclosed = lineDuty.line.place.enclosed?.value ?? site.enclosed ?? false;
  const noise = lineDuty.line.place.noiseLimit?.low ?? site.noiseLimit?.low ?? Number.POSITIVE_INFINITY;
  return [
    ...holds(site.sourcesAllowed.includes(source), {
      code: 'assembly-source-not-allowed',
      sentence: `${number} runs on ${source}, which the site does not allow.`,
      expected: site.sourcesAllowed.join(', '),
      found: source,
    }),
    ...holds(source !== 'petrol' || !(inZone || enclosed || lineDuty.line.process.service?.value === 'oxygen'), {
      code: 'assembly-petrol-here',
      sentence: `${number} has a petrol engine; the place is a zone, enclosed or in oxygen service.`,
      expected: 'no petrol engine',
      found: number,
    }),
    ...holds(source !== 'air' || site.airPressure !== undefined, {
      code: 'assembly-air-missing',
      sentence: `${number} runs on air, and the site says nothing of air.`,
      expected: 'a supply of air',
      found: 'none',
    }),
    ...atMost({
      code: 'assembly-too-loud',
      what: `The sound of ${number} in dB`,
      expected: noise,
      found: facts.soundPressure,
    }),
    ...atMost({
      code: 'assembly-too-cold',
      what: `The lowest temperature that ${number} works at`,
      expected: site.temperature?.low ?? Number.POSITIVE_INFINITY,
      found: facts.lowestTemperature,
    }),
    ...atMost({
      code: 'assembly-too-hot',
      what: 'The temperature of the site',
      expected: facts.highestTemperature,
      found: site.temperature?.high ?? Number.NEGATIVE_INFINITY,
    }),
    ...atMost({
      code: 'assembly-too-high-up',
      what: 'The altitude of the site',
      expected: facts.highestAltitude,
      found: site.altitude?.high ?? Number.NEGATIVE_INFINITY,
    }),
  ];
}

function checkMarkings(subject: Subject): readonly Discrepancy[] {
  const { chain, lineDuty, site } = subject;
  const place = {
    zone: zoneOf(subject),
    gasGroup: lineDuty.line.place.gasGroup?.value ?? site.gasGroup ?? null,
    temperatureClass: lineDuty.line.place.temperatureClass?.value ?? site.temperatureClass ?? null,
  };
  const moving: readonly Model[] = [
    chain.drive,
    chain.head,
    ...chain.options.filter((option) => option.facts.electronic || option.facts.kind === 'torque limiter'),
  ];
  return moving.flatMap((part) =>
    holds(mayStand(part.marking, place), {
      code: 'assembly-marking',
      sentence: `${part.number} may not stand here: its plate is not for zone ${place.zone}, gas group ${place.gasGroup ?? 'not known'}, temperature class ${place.temperatureClass ?? 'not known'}.`,
      expected: `a marking for zone ${place.zone}`,
      found: part.marking ?? 'unmarked',
    }),
  );
}

function checkRoom({ chain, lineDuty }: Subject): readonly Discrepancy[] {
  const { place } = lineDuty.line;
  const faces = place.faces?.value ?? 'up';
  const radius = place.clearRadius?.low ?? Number.POSITIVE_INFINITY;
  const stack = (link: (typeof chain.links)[number]): number =>
    chain.head.facts.height +
    link.extensions.reduce((sum, part) => sum + part.facts.length.low, 0) +
    link.adapter.facts.height;
  const loose = faces === 'up' ? [] : chain.adapters.filter((adapter) => !adapter.facts.holdsSideways);
  return [
    ...atMost({
      code: 'assembly-no-room',
      what: `The swing of ${chain.head.number}`,
      expected: radius,
      found: chain.head.facts.swingRadius,
    }),
    ...atMost({
      code: 'assembly-no-room',
      what: `The arm of ${chain.restraint.number}`,
      expected: radius,
      found: chain.restraint.facts.arm.low,
    }),
    ...(faces === 'up' ? chain.links : []).flatMap((link) =>
      atMost({
        code: 'assembly-no-headroom',
        what: `The height of the chain with ${link.adapter.number}`,
        expected: place.headroom?.low ?? Number.POSITIVE_INFINITY,
        found: stack(link),
      }),
    ),
    ...holds(chain.restraint.facts.facings.includes(faces), {
      code: 'assembly-restraint-facing',
      sentence: `${chain.restraint.number} is not for a wheel or nut that faces ${faces}.`,
      expected: chain.restraint.facts.facings.join(', '),
      found: faces,
    }),
    ...holds(loose.length === 0, {
      code: 'assembly-adapter-facing',
      sentence: `${loose.map((adapter) => adapter.number).join(', ')} would come off a wheel that faces ${faces}.`,
      expected: 'adapters that hold on',
      found: loose.map((adapter) => adapter.number).join(', '),
    }),
  ];
}

function checkHouseRules(subject: Subject): readonly Discrepancy[] {
  return subject.site.houseRules.flatMap((rule) => {
    const breakers = rulesBrokenBy(subject, rule);
    return holds(breakers.length === 0, {
      code: 'assembly-house-rule',
      sentence: `The assembly breaks a rule of the house: ${rule.sentence}`,
      expected: `${rule.kind} ${rule.value}`,
      found: breakers.join(', '),
    });
  });
}

/** Numbers of the parts that a house rule forbids, worked out without the rule’s own predicate. */
function rulesBrokenBy({ chain, site, lineDuty }: Subject, { kind, value }: HouseRule): readonly string[] {
  const { drive, head, restraint } = chain;
  const most = Number.parseFloat(value);
  const classRank = DUTY_CLASSES.indexOf(drive.facts.dutyClass);
  const when = (broken: boolean, part: { readonly number: string }): readonly string[] => (broken ? [part.number] : []);
  switch (kind) {
    case 'no-source':
      return when(value === drive.facts.power.kind, drive);
    case 'largest-class':
      return when(
        DUTY_CLASSES.some((name, rank) => name === value && rank < classRank),
        drive,
      );
    case 'no-head-kind':
      return when(value === head.facts.kind, head);
    case 'no-adapter-kind':
      return chain.adapters.flatMap((adapter) => when(value === adapter.facts.kind, adapter));
    case 'no-restraint-kind':
      return when(value === restraint.facts.kind, restraint);
    case 'always-limiter':
      return when(chain.limiter === null, drive);
    case 'counter-above-turns':
      return when(chain.counter === null && lineDuty.duty.turns.high > most, drive);
    case 'no-lithium-by':
      return when(site.transport === value && drive.facts.power.kind === 'battery', drive);
    case 'persons-at-every-valve':
      return when(site.personsPerCrew < most, drive);
    case 'max-lift':
      return [drive, head, restraint, ...chain.adapters, ...chain.extensions].flatMap((part) =>
        when(part.mass > most, part),
      );
    case 'max-sound':
      return when(drive.facts.soundPressure > most, drive);
    case 'max-vibration':
      return when(drive.facts.vibration > most, drive);
    case 'no-restraint-to':
      return when(onlyAnchor(restraint) === value, restraint);
    case 'no-chain-to':
      return when(restraint.facts.kind === 'reaction arm with chain' && onlyAnchor(restraint) === value, restraint);
  }
}

/** The anchor of a restraint that can have no other. */
function onlyAnchor({ facts }: RestraintModel): string | undefined {
  return facts.needs.length === 1 ? facts.needs[0] : undefined;
}

/** Lines that are never planned at all. */
function checkLine({ lineDuty }: Subject): readonly Discrepancy[] {
  const { line, duty } = lineDuty;
  return holds(!duty.seized && line.state.locked?.value !== true && duty.grip.kind !== 'none', {
    code: 'assembly-line-not-workable',
    sentence: `${line.tag} is seized, locked or has nothing to grip, and is not to be worked.`,
    expected: 'no assembly',
    found: 'an assembly',
  });
}
