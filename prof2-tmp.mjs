// lib/equipment/drive.ts
var DUTY_CLASSES = ["light", "medium", "heavy"];

// lib/kernel/invariant.ts
var InvariantError = class extends Error {
  name = "InvariantError";
};
function invariant(condition, sentence) {
  if (!condition) throw new InvariantError(sentence);
}

// lib/money/money.ts
function toMinor(value) {
  invariant(Number.isSafeInteger(value), `An amount of money is a whole number of minor units, not ${value}.`);
  return value;
}

// lib/units/quantity.ts
var newtonMetres = (value) => value;
var newtons = (value) => value;
var metres = (value) => value;
var squareMetres = (value) => value;
var pascals = (value) => value;
var bar = (value) => value * 1e5;
var perMinute = (value) => value;
var seconds = (value) => value;
var kilograms = (value) => value;
var watts = (value) => value;
var joules = (value) => value;
var wattHours = (value) => value;
var celsius = (value) => value;
var degrees = (value) => value;
var cubicMetresPerSecond = (value) => value;
var turns = (value) => value;
var ratio = (value) => value;
var decibels = (value) => value;
var metresPerSecondSquared = (value) => value;
var metresPerSecond = (value) => value;
var volts = (value) => value;
var quantity = (value) => value;

// lib/equipment/sample-model.ts
function sampleBase(number, name) {
  return {
    number,
    name,
    mass: kilograms(6),
    case: { length: metres(0.5), width: metres(0.4), height: metres(0.3) },
    rates: { day_minor: toMinor(2e3), week_minor: toMinor(7e3), four_weeks_minor: toMinor(2e4), minimum_days: 1 },
    replacement_minor: toMinor(1e5),
    counted: false,
    madeToOrder: false,
    marking: null
  };
}

// lib/kernel/random.ts
function seededRandom(seed) {
  let state = seed >>> 0;
  return () => {
    state = state + 1831565813 >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ mixed >>> 15, mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ mixed >>> 7, mixed | 61);
    return ((mixed ^ mixed >>> 14) >>> 0) / 4294967296;
  };
}

// lib/rules/sample-parts.ts
var square = (size, gender) => ({ form: "square", size, gender });
function changed(start, change) {
  return {
    ...start,
    number: change.number ?? start.number,
    mass: change.mass_kg === void 0 ? start.mass : kilograms(change.mass_kg),
    marking: change.marking ?? start.marking,
    madeToOrder: change.madeToOrder ?? start.madeToOrder
  };
}
var SAMPLE_GEAR = {
  name: "low",
  stallTorque: newtonMetres(100),
  ratedTorque: newtonMetres(80),
  freeSpeed: perMinute(120)
};
var BATTERY = {
  kind: "battery",
  voltage: volts(36),
  capacity_ah: 5,
  packsIncluded: 2,
  packNumber: "SP-1",
  efficiency: ratio(0.6),
  rechargeTime: seconds(3600)
};
function sampleDrive(change = {}) {
  const facts = {
    dutyClass: "light",
    gears: [SAMPLE_GEAR],
    output: square("20", "male"),
    reversible: true,
    holdToRun: true,
    continuousRun: seconds(1800),
    restAfterRun: seconds(600),
    soundPressure: decibels(78),
    vibration: metresPerSecondSquared(2),
    power: BATTERY,
    lowestTemperature: celsius(-15),
    highestTemperature: celsius(45),
    highestAltitude: metres(3e3),
    limiter: null,
    ...change.facts
  };
  return { ...changed(sampleBase("SD-1", "sample drive"), change), role: "drive", facts };
}
var SAMPLE_AIR = {
  kind: "air",
  ratedPressure: pascals(6e5),
  lowestPressure: pascals(4e5),
  highestPressure: pascals(7e5),
  consumption: cubicMetresPerSecond(0.02),
  hoseBore: metres(0.013)
};
var SAMPLE_PETROL = {
  kind: "petrol",
  tank_l: 1,
  litresPerHour: 0.8,
  ratedPower: watts(1200)
};
function sampleHead(change = {}) {
  const facts = {
    kind: "open-centre",
    ratio: ratio(4),
    efficiency: { low: ratio(0.8), high: ratio(0.9) },
    reverses: false,
    torqueRating: newtonMetres(500),
    maxInputSpeed: perMinute(300),
    input: square("20", "female"),
    output: square("25", "male"),
    bore: metres(0.06),
    swingRadius: metres(0.25),
    height: metres(0.2),
    ...change.facts
  };
  return { ...changed(sampleBase("SH-1", "sample head"), change), role: "head", facts };
}
function sampleWheelAdapter(change = {}) {
  const facts = {
    kind: "peg plate",
    input: square("25", "female"),
    wheel: {
      diameter: { low: metres(0.25), high: metres(0.5) },
      spokes: { low: 3, high: 6 },
      dishUpTo: degrees(10),
      rimUpTo: metres(0.04)
    },
    takesExtension: true,
    bore: metres(0.06),
    retention: "clamped",
    torqueRating: newtonMetres(450),
    fittingTime: seconds(120),
    staysOnWheel: false,
    holdsSideways: true,
    height: metres(0.1),
    ...change.facts
  };
  return { ...changed(sampleBase("SA-1", "sample peg plate"), change), role: "adapter", facts };
}
function sampleKey(change = {}) {
  const facts = {
    kind: "valve key",
    input: square("25", "female"),
    sockets: [{ shape: "square", acrossFlats: metres(0.03), slack: metres(3e-3) }],
    length: { low: metres(1), high: metres(2.2) },
    takesExtension: true,
    retention: "none",
    torqueRating: newtonMetres(450),
    fittingTime: seconds(60),
    staysOnWheel: false,
    holdsSideways: false,
    height: metres(0.1),
    ...change.facts
  };
  return { ...changed(sampleBase("SK-1", "sample key"), change), role: "adapter", facts };
}
function sampleShaft(change = {}) {
  const facts = {
    kind: "extension shaft",
    input: square("25", "female"),
    output: square("25", "male"),
    length: { low: metres(0.5), high: metres(0.5) },
    torqueRating: newtonMetres(450),
    maxSpeed: perMinute(100),
    ...change.facts
  };
  return { ...changed(sampleBase("SX-1", "sample shaft"), change), role: "extension", facts };
}
function sampleJoint(change = {}) {
  return sampleShaft({
    number: "SJ-1",
    ...change,
    facts: {
      kind: "universal joint",
      highestAngle: degrees(25),
      length: { low: metres(0.1), high: metres(0.1) },
      ...change.facts
    }
  });
}
function sampleRestraint(change = {}) {
  const facts = {
    kind: "twin-point arm",
    torqueRating: newtonMetres(600),
    forceRating: newtons(4e3),
    arm: { low: metres(0.4), high: metres(0.8) },
    directions: "both ways",
    followsTravel: true,
    sideLoad: "balanced",
    facings: ["up", "side", "down"],
    reach: metres(1.5),
    needs: ["structure"],
    setUpTime: seconds(240),
    headKinds: ["inline", "right-angle", "open-centre"],
    ...change.facts
  };
  return { ...changed(sampleBase("SR-1", "sample twin-point arm"), change), role: "restraint", facts };
}
function sampleLimiter(change = {}) {
  const facts = {
    kind: "torque limiter",
    lowest: newtonMetres(10),
    highest: newtonMetres(120),
    error: ratio(0.1),
    overshoot: newtonMetres(2),
    step: newtonMetres(2),
    bothDirections: true,
    input: square("20", "female"),
    output: square("20", "male"),
    setUpTime: seconds(60),
    sits: "after drive",
    electronic: false,
    ...change.facts
  };
  return { ...changed(sampleBase("SL-1", "sample limiter"), change), role: "option", facts };
}
function sampleCounter(change = {}) {
  const facts = {
    kind: "turns counter",
    highestTurns: 999,
    setUpTime: seconds(30),
    sits: "clip-on",
    electronic: false,
    ...change.facts
  };
  return { ...changed(sampleBase("SC-1", "sample counter"), change), role: "option", facts };
}

// tests/support/plausible-catalogue.ts
var CLASSES = {
  light: { spline: "spline 20", square: "20", stall: 50, scale: 1 },
  medium: { spline: "spline 28", square: "25", stall: 110, scale: 2.2 },
  heavy: { spline: "spline 38", square: "40", stall: 260, scale: 5 }
};
var SHARES = { drive: 0.14, head: 0.16, wheel: 0.24, nut: 0.12, extension: 0.1, restraint: 0.14, limiter: 0.05 };
function plausibleCatalogue(at2) {
  const random = seededRandom(at2.seed);
  const draw = (from, to) => from + (to - from) * random();
  const makers = {
    drive: makeDrive,
    head: makeHead,
    wheel: makeWheelAdapter,
    nut: makeKey,
    extension: makeExtension,
    restraint: makeRestraint,
    limiter: makeLimiter
  };
  const models2 = ["drive", "head", "wheel", "nut", "extension", "restraint", "limiter"].flatMap(
    (role) => Array.from({ length: Math.max(3, Math.round(at2.models * SHARES[role])) }, (_, index) => {
      const making = { index, dutyClass: DUTY_CLASSES[index % 3] ?? "light", draw, pick: pickWith(random) };
      return priced(makers[role](making), { ...making, role });
    })
  );
  const extras = [sampleCounter({ number: "C-1" }), sampleCounter({ number: "C-2", facts: { highestTurns: 9999 } })];
  const all = [...models2, ...extras, ...accessories(at2.models - models2.length - extras.length)];
  return { models: all, free: Object.fromEntries(all.map((model) => [model.number, Math.round(draw(1, 5))])) };
}
function pickWith(random) {
  return (values) => {
    const value = values[Math.floor(random() * values.length)];
    if (value === void 0) throw new Error("Nothing to pick from.");
    return value;
  };
}
var spline = (dutyClass, gender) => ({
  form: "spline",
  size: CLASSES[dutyClass].spline,
  gender
});
var square2 = (dutyClass, gender) => ({
  form: "square",
  size: CLASSES[dutyClass].square,
  gender
});
var round = (value, step) => Math.round(value / step) * step;
var DAY_RATES = {
  drive: 45,
  head: 18,
  wheel: 9,
  nut: 8,
  extension: 6,
  restraint: 12,
  limiter: 14
};
var MASSES = {
  drive: 6,
  head: 4,
  wheel: 3,
  nut: 4,
  extension: 2,
  restraint: 5,
  limiter: 1.5
};
function priced(model, at2) {
  const bigger = Math.sqrt(CLASSES[at2.dutyClass].scale);
  const day = round(DAY_RATES[at2.role] * bigger * at2.draw(0.7, 1.6) * 100, 50);
  return {
    ...model,
    mass: kilograms(round(MASSES[at2.role] * bigger * at2.draw(0.8, 1.4), 0.1)),
    rates: {
      day_minor: toMinor(day),
      week_minor: toMinor(round(day * 3.5, 50)),
      four_weeks_minor: toMinor(round(day * 10, 50)),
      minimum_days: 1
    }
  };
}
function makeDrive({ index, dutyClass, draw, pick }) {
  const { stall } = CLASSES[dutyClass];
  const high = round(stall * draw(0.7, 1.5), 5);
  const speed = round(draw(50, 120), 5);
  const source2 = pick(["battery", "battery", "air", "air", "petrol"]);
  const gear = (name, share2) => ({
    name,
    stallTorque: newtonMetres(high * share2),
    ratedTorque: newtonMetres(high * share2 * 0.6),
    freeSpeed: perMinute(speed / share2)
  });
  const power = { battery: void 0, air: SAMPLE_AIR, petrol: SAMPLE_PETROL }[source2];
  const built = {
    lowest: newtonMetres(round(high * 0.2, 5)),
    highest: newtonMetres(high),
    error: ratio(0.1),
    overshoot: newtonMetres(2),
    step: newtonMetres(5),
    bothDirections: true
  };
  return sampleDrive({
    number: `D-${index}`,
    facts: {
      dutyClass,
      gears: draw(0, 1) < 0.6 ? [gear("low", 1), gear("high", 0.4)] : [gear("single", 1)],
      output: spline(dutyClass, "male"),
      soundPressure: decibels(source2 === "petrol" ? 98 : 82),
      limiter: draw(0, 1) < 0.3 ? built : null,
      ...power === void 0 ? {} : { power }
    }
  });
}
function makeHead({ index, dutyClass, draw, pick }) {
  const { stall } = CLASSES[dutyClass];
  const kind = pick(["inline", "right-angle", "open-centre", "open-centre"]);
  const step = pick([1.5, 2, 3, 4, 5]);
  return sampleHead({
    number: `H-${index}`,
    facts: {
      kind,
      ratio: ratio(step),
      efficiency: { low: ratio(0.8), high: ratio(0.92) },
      torqueRating: newtonMetres(round(stall * step * draw(0.9, 1.6), 10)),
      maxInputSpeed: perMinute(400),
      input: spline(dutyClass, "female"),
      output: square2(dutyClass, "male"),
      bore: metres(round(draw(0.03, 0.09), 5e-3)),
      swingRadius: metres(round(draw(0.2, 0.5), 0.01)),
      height: metres(round(draw(0.12, 0.3), 0.01))
    }
  });
}
function makeWheelAdapter({ index, dutyClass, draw, pick }) {
  const low = 0.15 + 0.05 * (Math.floor(index / 3) % 12);
  return sampleWheelAdapter({
    number: `A-${index}`,
    facts: {
      kind: pick(["peg plate", "self-centring driver", "spoke driver", "bolt-on plate"]),
      input: square2(dutyClass, "female"),
      wheel: {
        diameter: { low: metres(low), high: metres(low + round(draw(0.15, 0.5), 0.05)) },
        spokes: { low: 3, high: pick([5, 6, 8]) },
        dishUpTo: degrees(pick([10, 20, 30])),
        rimUpTo: metres(0.05)
      },
      takesExtension: draw(0, 1) < 0.5,
      bore: metres(round(draw(0.03, 0.1), 5e-3)),
      torqueRating: newtonMetres(round(200 * CLASSES[dutyClass].scale * draw(0.7, 1.8), 10)),
      fittingTime: seconds(round(draw(60, 400), 10)),
      holdsSideways: draw(0, 1) < 0.7
    }
  });
}
var ACROSS_FLATS = [0.029, 0.036, 0.024, 0.032, 0.019, 0.05];
function makeKey({ index, dutyClass, draw, pick }) {
  const across = ACROSS_FLATS[Math.floor(index / 3) % ACROSS_FLATS.length] ?? 0.029;
  const shortest2 = round(draw(0.5, 1.4), 0.1);
  return sampleKey({
    number: `K-${index}`,
    facts: {
      input: square2(dutyClass, "female"),
      sockets: [{ shape: index % 5 === 4 ? "hexagon" : "square", acrossFlats: metres(across), slack: metres(4e-3) }],
      length: { low: metres(shortest2), high: metres(shortest2 + round(draw(0.6, 1.8), 0.1)) },
      torqueRating: newtonMetres(round(200 * CLASSES[dutyClass].scale * draw(0.7, 1.8), 10)),
      fittingTime: seconds(round(draw(30, 150), 10))
    }
  });
}
function makeExtension({ index, dutyClass, draw, pick }) {
  const next = index % 9 < 3 ? DUTY_CLASSES[(index + 1) % 3] ?? dutyClass : dutyClass;
  const length = metres(next === dutyClass ? pick([0.3, 0.5, 0.8, 1.2]) : 0.06);
  const facts = {
    input: square2(dutyClass, "female"),
    output: square2(next, "male"),
    torqueRating: newtonMetres(round(180 * CLASSES[dutyClass].scale * draw(0.7, 1.6), 10)),
    maxSpeed: perMinute(round(draw(40, 160), 10))
  };
  if (index % 7 === 6) return sampleJoint({ number: `E-${index}`, facts });
  const bored = draw(0, 1) < 0.3 ? { bore: metres(0.06) } : {};
  return sampleShaft({ number: `E-${index}`, facts: { ...facts, ...bored, length: { low: length, high: length } } });
}
var RESTRAINTS = [
  { kind: "reaction arm with chain", needs: ["structure", "large pipe"], directions: "one way", setUp: 200 },
  { kind: "twin-point arm", needs: ["structure"], directions: "both ways", setUp: 300 },
  { kind: "tow-bar brace", needs: ["vehicle"], directions: "both ways", setUp: 420 },
  { kind: "ground plate", needs: ["firm ground"], directions: "both ways", setUp: 260 },
  { kind: "street stand", needs: ["street surface"], directions: "both ways", setUp: 240 },
  { kind: "reaction arm with strap", needs: ["large pipe", "flange"], directions: "one way", setUp: 180 }
];
function makeRestraint({ index, dutyClass, draw, pick }) {
  const { kind, needs, directions, setUp } = pick(RESTRAINTS);
  const { scale } = CLASSES[dutyClass];
  return sampleRestraint({
    number: `R-${index}`,
    facts: {
      kind,
      needs,
      directions,
      sideLoad: kind === "twin-point arm" ? "balanced" : "single anchor",
      torqueRating: newtonMetres(round(260 * scale * draw(0.8, 1.8), 10)),
      forceRating: newtons(round(2200 * scale * draw(0.8, 1.8), 100)),
      arm: { low: metres(round(draw(0.4, 0.7), 0.05)), high: metres(1.2) },
      followsTravel: draw(0, 1) < 0.6,
      setUpTime: seconds(round(setUp * draw(0.7, 1.4), 10))
    }
  });
}
function makeLimiter({ index, dutyClass, draw }) {
  const after = index % 2 === 0;
  const { stall, scale } = CLASSES[dutyClass];
  const highest = round(after ? stall * draw(1, 1.6) : 300 * scale * draw(0.7, 1.4), 10);
  const join2 = after ? spline : square2;
  return sampleLimiter({
    number: `L-${index}`,
    facts: {
      sits: after ? "after drive" : "after head",
      input: join2(dutyClass, "female"),
      output: join2(dutyClass, "male"),
      lowest: newtonMetres(round(highest * 0.1, 1)),
      highest: newtonMetres(highest),
      error: ratio(after ? 0.1 : 0.06),
      step: newtonMetres(round(Math.max(1, highest / 60), 1)),
      bore: metres(0.07)
    }
  });
}
function accessories(count) {
  const kinds = ["second chain", "charger", "spare pack", "air hose", "hose restraint", "pegs", "lanyards"];
  return Array.from({ length: Math.max(1, count) }, (_, index) => {
    const base = sampleBase(`S-${index + 1}`, "accessory");
    const kind = kinds[index % kinds.length] ?? "lanyards";
    return { ...base, mass: kilograms(1), role: "accessory", facts: { kind, fits: [], saleItem: false } };
  });
}

// lib/units/known-value.ts
var BASES = ["measured", "stated", "standard", "computed", "rule of thumb", "assumed"];
function known(unit, range, origin) {
  const { low, nominal, high } = range;
  invariant(
    low <= nominal && nominal <= high,
    `A known value needs low \u2264 nominal \u2264 high, not ${low}, ${nominal}, ${high}.`
  );
  invariant(origin.source.length > 0, "A known value needs a source sentence.");
  return { low, nominal, high, unit, ...origin };
}
function exactly(unit, value, origin) {
  return known(unit, { low: value, nominal: value, high: value }, origin);
}
function fact(value, origin) {
  return { value, ...origin };
}
function basisRank(basis) {
  return BASES.indexOf(basis);
}
function worstBasis(bases) {
  return bases.reduce((worst, basis) => basisRank(basis) > basisRank(worst) ? basis : worst, "measured");
}

// lib/kernel/result.ts
function ok(value) {
  return { ok: true, value };
}
function failed(reason) {
  return { ok: false, reason };
}

// lib/engineering/hazardous-marking.ts
var GRAMMAR = /^(I|II) (M1|M2|1|2|3) ?(G|D)?(?: \/?)? ?(EEx|Ex) ((?:[a-z]{1,3} )+)(I|II[ABC]?|III[ABC])(?: (T[1-6]|T ?\d{2,3} ?°C))?(?: (Ma|Mb|Ga|Gb|Gc|Da|Db|Dc))?(?: (X|U))?$/;
var ZONES = {
  "0": { atmosphere: "G", category: 1 },
  "1": { atmosphere: "G", category: 2 },
  "2": { atmosphere: "G", category: 3 },
  "20": { atmosphere: "D", category: 1 },
  "21": { atmosphere: "D", category: 2 },
  "22": { atmosphere: "D", category: 3 }
};
var LEVEL_OF_CATEGORY = { "1": "a", "2": "b", "3": "c", M1: "a", M2: "b" };
var PROTECTIONS = new Set(
  "b c d da db dc e eb ec h i ia ib ic k m ma mb mc n o ob oc p px pxb py pyb pz pzc q qb s sa sb sc t ta tb tc".split(
    " "
  )
);
var CLASS_LIMITS = {
  T1: 450,
  T2: 300,
  T3: 200,
  T4: 135,
  T5: 100,
  T6: 85
};
var HARDEST_CLASS = "T6";
function parseMarking(text) {
  const tidy = text.replace(/[⟨⟩⬡]|\bCE\b/g, " ").replace(/\s+/g, " ").trim();
  const found = GRAMMAR.exec(tidy);
  if (found === null) {
    return failed({
      code: "marking-unreadable",
      sentence: `The marking \u201C${text}\u201D cannot be read; it counts as unmarked.`
    });
  }
  const [, group2, category, atmosphere, prefix, codes, subgroup, temperature, level, suffix] = found;
  const protections = (codes ?? "").trim().split(" ");
  const strange = protections.filter((code) => !PROTECTIONS.has(code));
  if (strange.length > 0) {
    return failed({
      code: "marking-unreadable",
      sentence: `The marking \u201C${text}\u201D names no type of protection that is known (${strange.join(", ")}); it counts as unmarked.`
    });
  }
  const marking = {
    group: group2 === "I" ? "I" : "II",
    category: readCategory(category),
    atmosphere: atmosphere === "G" || atmosphere === "D" ? atmosphere : null,
    protections,
    subgroup: subgroup ?? "",
    temperature: temperature?.replaceAll(" ", "") ?? null,
    level: level ?? null,
    special: suffix === "X",
    old: prefix === "EEx" || level === void 0 || protections.some((code) => ["c", "b", "k"].includes(code))
  };
  return contradiction(marking, text) ?? ok(marking);
}
function suitsPlace({
  marking,
  place
}) {
  const name = zoneName(place.zone);
  if (name === null) return ok(null);
  const zone = ZONES[name];
  if (zone === void 0)
    return refuse(
      "zone-unknown",
      `\u201C${place.zone}\u201D is not a zone that can be checked; ask what the area is classified as.`
    );
  if (marking === null)
    return refuse("marking-missing", `Unmarked equipment is refused in zone ${name}, whatever drives it.`);
  const parsed = parseMarking(marking);
  if (!parsed.ok) return parsed;
  return misfit(parsed.value, { ...place, zone: name }, zone) ?? ok(parsed.value);
}
function zoneName(text) {
  const tidy = text.trim().toLowerCase();
  if (["", "none", "no", "safe", "safe area", "unclassified", "non-hazardous", "n/a"].includes(tidy)) return null;
  return /^(?:(?:atex|ex|gas|dust)\s*)?(?:zone|z)?\s*(0|1|2|20|21|22)$/.exec(tidy)?.[1] ?? text.trim();
}
function readCategory(text) {
  if (text === "M1" || text === "M2" || text === "1" || text === "2") return text;
  return "3";
}
function contradiction(marking, text) {
  const wanted = LEVEL_OF_CATEGORY[marking.category];
  const letter = marking.group === "I" ? "M" : marking.atmosphere;
  const levelFits = marking.level === null || wanted === void 0 || marking.level === `${letter}${wanted}`;
  const dust = marking.subgroup.startsWith("III");
  const groupFits = marking.group === "I" === (marking.subgroup === "I") && (marking.atmosphere === null || dust === (marking.atmosphere === "D"));
  if (levelFits && groupFits) return null;
  return failed({
    code: "marking-contradictory",
    sentence: `The marking \u201C${text}\u201D contradicts itself (category ${marking.category}${marking.atmosphere ?? ""}, level ${marking.level ?? "none"}, group ${marking.subgroup}); it counts as unmarked.`
  });
}
function misfit(marking, place, zone) {
  const category = Number(marking.category);
  if (marking.group !== "II" || marking.atmosphere !== zone.atmosphere || !(category <= zone.category)) {
    return refuse(
      "marking-category",
      `Marked ${marking.category}${marking.atmosphere ?? ""}; zone ${place.zone} asks for category ${zone.category}${zone.atmosphere} or better.`
    );
  }
  const group2 = demandedGroup(place.gasGroup, zone.atmosphere);
  if (rankOfGroup(marking.subgroup) < rankOfGroup(group2.value)) {
    return refuse("marking-gas-group", `Marked ${marking.subgroup}; the place asks for ${group2.value}${group2.why}.`);
  }
  const hottest = demandedSurface(place.temperatureClass);
  if ((surfaceOf(marking.temperature) ?? Number.POSITIVE_INFINITY) > hottest.value) {
    return refuse(
      "marking-temperature-class",
      `Marked ${marking.temperature ?? "without a temperature class"}; the place asks for ${hottest.name}${hottest.why}.`
    );
  }
  return null;
}
function demandedGroup(text, atmosphere) {
  const group2 = atmosphere === "D" ? "III" : "II";
  const name = atmosphere === "D" ? "dust group" : "gas group";
  if (text === null) return { value: `${group2}C`, why: `, taken because its ${name} is not known` };
  const letter = new RegExp(`^(?:(?:gas|dust) )?(?:group )?(?:${group2})?([ABC])$`, "i").exec(text.trim())?.[1];
  if (letter !== void 0) return { value: `${group2}${letter.toUpperCase()}`, why: "" };
  return { value: `${group2}C`, why: `, taken because \u201C${text}\u201D is no ${name} that can be read` };
}
function demandedSurface(text) {
  const hardest2 = { name: HARDEST_CLASS, value: CLASS_LIMITS[HARDEST_CLASS] ?? 0 };
  if (text === null) return { ...hardest2, why: ", taken because its class is not known" };
  const value = surfaceOf(text);
  if (value !== null) return { name: text.trim(), value, why: "" };
  return { ...hardest2, why: `, taken because \u201C${text}\u201D is no temperature class that can be read` };
}
function rankOfGroup(group2) {
  return group2 === "II" ? 3 : " ABC".indexOf(group2.slice(-1));
}
function surfaceOf(text) {
  const tidy = (text ?? "").replaceAll(" ", "").toUpperCase();
  const degrees2 = /^T?(\d{2,3})°?C$/.exec(tidy)?.[1];
  return degrees2 === void 0 ? CLASS_LIMITS[tidy] ?? null : Number(degrees2);
}
function refuse(code, sentence) {
  return failed({ code, sentence });
}

// lib/rules/place-facts.ts
var FORBIDDEN_ANCHOR = /hand ?rail|tray|scaffold|small[ -]?(bore|pipe)|conduit|ladder|instrument/i;
function placeOf({
  line,
  duty,
  site
}) {
  const { place } = line;
  const assumed = [];
  const zoneText = place.zone?.value ?? site.zone;
  if (zoneText === void 0) assumed.push("No zone is given: the place is taken as not hazardous.");
  const enclosed = place.enclosed?.value ?? site.enclosed;
  if (enclosed === void 0) assumed.push("Nothing is said of the place being enclosed: open air is assumed.");
  const anchor = anchorOf(place.anchor?.value);
  if (anchor === "unknown") assumed.push("Nothing is said of an anchor: look for one before the visit.");
  if (place.faces === void 0 && duty.grip.kind === "wheel") {
    assumed.push("Nothing is said of which way the wheel faces: up is assumed.");
  }
  return {
    zone: zoneText === void 0 ? null : zoneName(zoneText),
    gasGroup: place.gasGroup?.value ?? site.gasGroup ?? null,
    temperatureClass: place.temperatureClass?.value ?? site.temperatureClass ?? null,
    enclosed: enclosed ?? false,
    noiseLimit_db: place.noiseLimit?.low ?? site.noiseLimit?.low ?? null,
    faces: place.faces?.value ?? "up",
    anchor,
    anchorText: place.anchor?.value ?? "not stated",
    anchorsAllowed: site.anchorsAllowed ?? null,
    vehicle_m: vehicleOf({ line, site }),
    surface: (place.surface?.value ?? "").toLowerCase(),
    headroom_m: place.headroom?.low ?? Number.POSITIVE_INFINITY,
    clearRadius_m: place.clearRadius?.low ?? Number.POSITIVE_INFINITY,
    service: line.process.service?.value ?? "other",
    assumed
  };
}
function vehicleOf({ line, site }) {
  const distance = line.place.vehicleDistance?.high;
  if (distance !== void 0) return site.vehicleAccess === false ? "none" : distance;
  return site.vehicleAccess === true ? "near" : "none";
}
function anchorOf(text) {
  if (text === void 0 || text.trim() === "") return "unknown";
  const plain = text.trim().toLowerCase();
  if (/^(none|no|nothing)/.test(plain)) return "none";
  if (FORBIDDEN_ANCHOR.test(plain)) return "forbidden";
  if (/yoke/.test(plain)) return "yoke";
  if (/structur|steel|beam|column|wall|concrete|foundation|bollard/.test(plain)) return "structure";
  if (/pipe/.test(plain)) return "large pipe";
  if (/flange/.test(plain)) return "flange";
  return "other";
}

// lib/rules/sample-facts.ts
var STATED = { basis: "stated", source: "Sample of the rules." };
var ASSUMED = { basis: "assumed", source: "Sample of the rules, assumed." };
function stated(unit, value) {
  return exactly(unit, value, STATED);
}
function ranged(unit, low, high) {
  return known(unit, { low, nominal: (low + high) / 2, high }, ASSUMED);
}
function said(value) {
  return { value, ...STATED };
}
function sampleDirection(change = {}) {
  return {
    starting: stated("N\xB7m", 150),
    running: stated("N\xB7m", 80),
    neverExceed: { kind: "stated", directions: ["opening", "closing"], torque: stated("N\xB7m", 400) },
    limiter: { low: newtonMetres(187), high: newtonMetres(400) },
    thrust: null,
    ...change
  };
}
var SAMPLE_GRIP = {
  kind: "wheel",
  wheelDiameter: stated("m", 0.4),
  wheelSpokes: { low: 4, high: 4 },
  wheelDish: stated("\xB0", 0),
  wheelRises: "no",
  stemRisesThroughWheel: "no"
};
function sampleDuty(change = {}) {
  return {
    tag: "V-1",
    qty: 1,
    strokes: 2,
    movement: "screw",
    opening: sampleDirection(),
    closing: sampleDirection(),
    turns: stated("turn", 40),
    bounds: [],
    thread: null,
    closes: "clockwise",
    minStrokeTime: null,
    maxInputSpeed: stated("1/min", 60),
    grip: SAMPLE_GRIP,
    countTurns: false,
    seized: false,
    findings: [],
    steps: [],
    measureFirst: null,
    ...change
  };
}
function sampleGrip(change) {
  return { ...SAMPLE_GRIP, ...change };
}
var SAMPLE_NUT = {
  kind: "nut",
  nutShape: "square",
  nutSizes: [stated("m", 0.029)],
  depthToNut: stated("m", 1.2),
  wheelRises: "no",
  stemRisesThroughWheel: "no"
};
function sampleLine(change = {}) {
  return {
    tag: "V-1",
    qty: 1,
    strokes: 2,
    process: {},
    state: {},
    stem: {},
    torque: {},
    interface: {},
    place: { zone: said("none"), anchor: said("structure"), faces: said("up"), enclosed: said(false) },
    ...change
  };
}
function sampleSite(change = {}) {
  return {
    sourcesAllowed: ["battery", "air", "petrol"],
    airPressure: stated("Pa", 7e5),
    vehicleAccess: true,
    shiftHours: 8,
    crews: 1,
    personsPerCrew: 2,
    moveMinutes: 10,
    startsOn: "2030-03-04",
    days: 5,
    transport: "road",
    operated: false,
    houseRules: [],
    ...change
  };
}
function lineFacts(change = {}) {
  const plain = sampleLine(change.line);
  const line = change.place === void 0 ? plain : { ...plain, place: { ...plain.place, ...change.place } };
  const duty = sampleDuty(change.duty);
  const site = sampleSite(change.site);
  return { line, duty, site, place: placeOf({ line, duty, site }) };
}
function sampleCoreDirection(change = {}) {
  return {
    ceiling: null,
    highest: newtonMetres(360),
    sure: newtonMetres(256),
    needed: newtonMetres(187),
    fastest: perMinute(24),
    speed: perMinute(22),
    strokeTime: { low: seconds(130), high: seconds(150) },
    ...change
  };
}
function sampleCore(change = {}) {
  const { figures, ...parts } = change;
  return {
    drive: sampleDrive(),
    gear: SAMPLE_GEAR,
    gearIndex: 0,
    limiter: null,
    head: sampleHead(),
    counter: null,
    ...parts,
    figures: {
      totalRatio: 4,
      factor: { low: ratio(3.2), high: ratio(3.6) },
      stallAtValve: newtonMetres(360),
      stallAtDrive: newtonMetres(100),
      sureAtValve: newtonMetres(256),
      highestAtValve: newtonMetres(360),
      neverExceed: newtonMetres(400),
      limiterRequired: false,
      limiter: null,
      inputSpeed: perMinute(120),
      opening: sampleCoreDirection(),
      closing: sampleCoreDirection(),
      energyPerVisit: joules(4e4),
      runTime: seconds(240),
      supplyShare: 1,
      ...figures
    }
  };
}
function reactionFacts(change = {}) {
  const { reaction, ...facts } = change;
  return {
    ...lineFacts(),
    core: sampleCore(),
    restraint: sampleRestraint(),
    secondChain: null,
    ...facts,
    reaction: { arm_m: 0.8, force: newtons(650), sideLoad: newtons(0), ...reaction }
  };
}

// lib/engineering/turns.ts
function turnsFromTravel({
  travel: travel2,
  lead,
  lostMotion
}) {
  return turns(travel2 / lead + lostMotion);
}
function waterworksTurns({ size, extra }) {
  return turns(3 * size / 0.0254 + extra);
}
function strokeWork({ torque: torque2, turns: turns2 }) {
  return joules(2 * Math.PI * torque2 * turns2);
}

// lib/duty/house-constants.ts
var common = (what) => ({ basis: "rule of thumb", source: `${what}; common practice, no source.` });
function constant(unit, low, nominal, high, origin) {
  return known(unit, { low, nominal, high }, origin);
}
var HOUSE_CONSTANTS = {
  /** Limiter window: how far its lower end lies above the highest starting torque. */
  limiterMargin: constant("1", 1.25, 1.25, 1.25, common("Margin of the limiter above the starting torque")),
  /** A safety factor on yielding where a stem's strength bounds the torque. */
  strengthFactor: constant("1", 1.5, 1.5, 1.5, common("Factor against yielding of stems and spindles")),
  /** A safety factor on bowing of a stem in compression. */
  bucklingFactor: constant("1", 2, 2, 2, common("Factor against bowing of stems")),
  bucklingEnds: constant(
    "1",
    0.6,
    0.75,
    0.95,
    common("Effective-length factor of a stem held in its nut and guided at its end")
  ),
  threadFriction: constant("1", 0.1, 0.15, 0.2, {
    basis: "rule of thumb",
    source: "Friction of stem and nut 0.15, 0.20 on the safe side (industry gate-valve torque guide, secondary); 0.10 when freshly greased, common practice."
  }),
  collarFriction: constant("1", 0.1, 0.15, 0.2, common("Friction of a plain shoulder")),
  rollingCollarFriction: constant(
    "1",
    3e-3,
    6e-3,
    0.012,
    common("Friction of a rolling thrust bearing at its mean diameter")
  ),
  swivelFriction: constant("1", 0.1, 0.15, 0.25, common("Friction of the pivot between stem and disc")),
  /** Mean diameter of what rubs, as a share of the stem's diameter. */
  collarShare: constant("1", 1.3, 1.45, 1.6, common("Mean diameter of a thrust shoulder against the stem")),
  swivelShare: constant(
    "1",
    0.25,
    0.4,
    0.6,
    common("Mean diameter of the pivot between stem and disc against the stem")
  ),
  lostMotion: constant("turn", 0, 0.5, 1.5, common("Turns before anything moves")),
  yieldOfUnknownStem: constant(
    "Pa",
    2e8,
    275e6,
    45e7,
    common("Yield stress of stems of unknown material, bronze to steel")
  ),
  yieldOfSteelStem: constant("Pa", 275e6, 4e8, 55e7, common("Yield stress of steel and 13 % chromium stems")),
  yieldOfBronzeStem: constant("Pa", 12e7, 17e7, 25e7, common("Yield stress of bronze and brass stems")),
  yieldOfSpindle: constant("Pa", 2e8, 235e6, 275e6, common("Yield stress of extension spindles of plain steel")),
  /** Diameter of the pin that holds an extension spindle, as a share of the spindle. */
  pinShare: constant("1", 0.25, 0.33, 0.4, common("Pin of an extension spindle against its spindle")),
  /** Old, corroded or stiff: weaker than any table. */
  oldStrength: constant("1", 0.6, 0.8, 1, common("Strength that age and corrosion leave")),
  soundStrength: constant("1", 1, 1, 1, common("Strength of a sound part")),
  /** A sound valve that is said to be moved with a torque bears so much of it. */
  borneMargin: constant("1", 1.5, 1.5, 1.5, common("What a sound valve bears against the torque that moves it")),
  yearsUntilOld: constant("1", 30, 30, 30, common("Years from which a valve counts as old")),
  /** Two hands on the bar of a key, each at half its length. */
  keyBarRadius: constant("m", 0.3, 0.4, 0.5, common("Half of the bar of a valve key")),
  handForce: constant("N", 360, 520, 670, {
    basis: "standard",
    source: "Between 360 N (80 lbf, API Spec 6D) and 670 N (150 lbf, MSS SP-91) in total at the rim."
  }),
  /** More than this many times the design pull of a person gets a question. */
  handForceQuestion: constant("1", 2.5, 2.5, 2.5, common("Times a person\u2019s force from which the numbers are doubted")),
  /** Speed at wheel or nut with flow or unknown flow, and without. */
  speedWithFlow: constant("1/min", 30, 30, 30, common("Speed at the wheel or nut while water may flow")),
  speedWithoutFlow: constant("1/min", 60, 60, 60, common("Speed at the wheel or nut in still water")),
  /** With flow: at least so long, and so long for each metre of nominal size. */
  strokeWithFlow: {
    least: constant("s", 15, 15, 15, common("Shortest stroke while water may flow")),
    perMetre: constant(
      "s",
      200,
      200,
      200,
      common("Shortest stroke while water may flow, 200 s for each m of size and 15 s at least")
    )
  },
  gearboxInputSpeed: constant("1/min", 60, 60, 60, common("Speed at the input of a valve\u2019s gearbox")),
  /** Share of the stroke at the closed end that does most of the closing. */
  effectiveShare: {
    gate: constant("1", 0.1, 0.15, 0.25, common("Last part of a gate\u2019s stroke that does most of the closing")),
    other: constant("1", 0.2, 0.3, 0.5, common("Last part of the stroke that does most of the closing"))
  },
  waveSpeed: constant("m/s", 400, 1e3, 1250, common("Speed of a pressure wave, plastic to steel pipe")),
  flowVelocity: constant("m/s", 0.5, 1.2, 2, common("Velocity in a water main")),
  /** Rise of pressure that a closure should stay below, as a share of the rated pressure. */
  surgeShare: constant("1", 0.2, 0.2, 0.2, common("Surge allowed as a share of the rated pressure")),
  turnsThatNeedCounting: constant("turn", 15, 15, 15, common("Turns from which a counter is required")),
  /** Stated and computed values that differ by more than this are shown with a finding. */
  disagreement: constant("1", 1.25, 1.25, 1.25, common("Ratio from which two values disagree"))
};

// lib/duty/sheet.ts
function openSheet() {
  return { steps: [], findings: [] };
}
function scratchSheet() {
  return { steps: null, findings: [] };
}
function term(symbol, name, value) {
  return { symbol, name, value, effect: "raises" };
}
function withEffect(effect, base) {
  return { ...base, effect };
}
function calculate(sheet, work) {
  const entries = entriesOf(work.terms);
  const values = corners(entries, work.evaluate);
  const bases = ["computed"];
  for (const [, { value }] of entries) bases.push(value.basis);
  const basis = worstBasis(bases);
  if (sheet.steps === null) return settle(work.unit, values, { basis, source: work.name });
  const source2 = `${work.name}: computed from ${entries.map(([, { name }]) => name).join(", ")}.`;
  const result2 = settle(work.unit, values, { basis, source: source2 });
  sheet.steps.push({
    id: work.id,
    name: work.name,
    formula: work.formula,
    inputs: entries.map(([, { symbol, name, value }]) => ({
      symbol,
      name,
      low: value.low,
      nominal: value.nominal,
      high: value.high,
      unit: value.unit,
      basis: value.basis,
      source: value.source
    })),
    result: result2,
    source: work.source
  });
  return result2;
}
function lookUp(sheet, entry) {
  sheet.steps?.push({
    id: entry.id,
    name: entry.name,
    formula: "",
    inputs: [],
    result: entry.value,
    source: entry.value.source
  });
  return entry.value;
}
function note(sheet, finding) {
  sheet.findings.push(finding);
}
function settle(unit, values, origin) {
  const low = finite(values.low);
  const high = finite(values.high);
  const nominal = Math.min(Math.max(finite(values.nominal), Math.min(low, high)), Math.max(low, high));
  return {
    low: quantity(Math.min(low, high)),
    nominal: quantity(nominal),
    high: quantity(Math.max(low, high)),
    unit,
    basis: origin.basis,
    source: origin.source
  };
}
function finite(value) {
  return Number.isFinite(value) ? value : 0;
}
function entriesOf(terms) {
  const entries = [];
  for (const key in terms) entries.push([key, terms[key]]);
  return entries;
}
function corners(entries, evaluate) {
  const keys = [];
  const point = [];
  const lowEnds = [];
  const highEnds = [];
  const open = [];
  for (const [key, { effect, value }] of entries) {
    if ((effect === "either" || effect === "bends") && value.low < value.high) open.push(keys.length);
    keys.push(key);
    point.push(value.nominal);
    lowEnds.push(effect === "lowers" ? value.high : value.low);
    highEnds.push(effect === "lowers" ? value.low : value.high);
  }
  let ends = point;
  const at2 = (key) => ends[keys.indexOf(key)] ?? Number.NaN;
  const nominal = evaluate(at2);
  if (open.length === 0) {
    ends = lowEnds;
    const low2 = evaluate(at2);
    ends = highEnds;
    return { low: low2, nominal, high: evaluate(at2) };
  }
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const choice of choices({ entries, open })) {
    for (const [index, end] of choice) {
      lowEnds[index] = end;
      highEnds[index] = end;
    }
    ends = lowEnds;
    low = Math.min(low, evaluate(at2));
    ends = highEnds;
    high = Math.max(high, evaluate(at2));
  }
  return { low, nominal, high };
}
function choices({
  entries,
  open
}) {
  let points = [[]];
  for (const index of open) {
    const [, term2] = entries[index] ?? [];
    if (term2 === void 0) continue;
    const { low, high } = term2.value;
    const ends = term2.effect === "bends" && low < 0 && high > 0 ? [low, 0, high] : [low, high];
    points = points.flatMap((point) => ends.map((end) => [...point, [index, end]]));
  }
  return points;
}

// lib/engineering/hand-force.ts
var HIGHEST_DESIGN_PULL = newtons(360);
var STRONG_PULL = newtons(670);
function rimTorque({
  force,
  wheelDiameter
}) {
  return newtonMetres(force * wheelDiameter / 2);
}
function rimForce({
  torque: torque2,
  wheelDiameter
}) {
  return newtons(torque2 / (wheelDiameter / 2));
}
function coupleTorque({
  forcePerHand,
  radius
}) {
  return newtonMetres(2 * forcePerHand * radius);
}

// lib/engineering/shaft-torsion.ts
var SQUARE_STRESS = 0.208;
function solidShaftTorque({
  stress,
  diameter
}) {
  return newtonMetres(stress * Math.PI * diameter ** 3 / 16);
}
function squareShaftTorque({ stress, side }) {
  return newtonMetres(SQUARE_STRESS * side ** 3 * stress);
}

// lib/engineering/stem-strength.ts
var STEEL_MODULUS = pascals(2e11);
var BRONZE_MODULUS = pascals(105e9);
function allowableShear({
  yieldStress: yieldStress2,
  safetyFactor
}) {
  return pascals(0.577 * yieldStress2 / safetyFactor);
}
function bucklingLoad({
  diameter,
  length,
  endFactor,
  modulus,
  yieldStress: yieldStress2,
  safetyFactor
}) {
  const area = Math.PI * diameter ** 2 / 4;
  const slenderness = endFactor * length / (diameter / 4);
  const elastic = Math.PI ** 2 * modulus;
  if (slenderness >= Math.sqrt(2 * elastic / yieldStress2))
    return newtons(elastic * area / (slenderness ** 2 * safetyFactor));
  return newtons(area * yieldStress2 * (1 - yieldStress2 * slenderness ** 2 / (4 * elastic)) / safetyFactor);
}

// lib/engineering/wheel-strength.ts
var OVERLOAD_PULL = newtons(890);
function wheelTorque({
  overload,
  wheelDiameter,
  strength
}) {
  return newtonMetres(overload * wheelDiameter / 2 * strength);
}
function spokeTorque({
  spokes,
  stress,
  spokeDiameter,
  contactRadius,
  hubRadius
}) {
  const moment = stress * Math.PI * spokeDiameter ** 3 / 32;
  return newtonMetres(2 * spokes * moment * contactRadius / Math.max(contactRadius - hubRadius, 1e-3));
}

// lib/duty/duty.ts
var DIRECTIONS = ["opening", "closing"];

// lib/engineering/pressure-rating-table.ts
var RATING_CLASSES = [150, 300, 600, 900, 1500, 2500];
var GROUP_1_1_RATINGS = [
  [38, [19.6, 51.1, 102.1, 153.2, 255.3, 425.5]],
  [50, [19.2, 50.1, 100.2, 150.4, 250.6, 417.7]],
  [100, [17.7, 46.6, 93.2, 139.8, 233, 388.3]],
  [150, [15.8, 45.1, 90.2, 135.2, 225.4, 375.6]],
  [200, [13.8, 43.8, 87.6, 131.4, 219, 365]],
  [250, [12.1, 41.9, 83.9, 125.8, 209.7, 349.5]],
  [300, [10.2, 39.8, 79.6, 119.5, 199.1, 331.8]],
  [325, [9.3, 38.7, 77.4, 116.1, 193.6, 322.6]],
  [350, [8.4, 37.6, 75.1, 112.7, 187.8, 313]],
  [375, [7.4, 36.4, 72.7, 109.1, 181.8, 303.1]],
  [400, [6.5, 34.7, 69.4, 104.2, 173.6, 289.3]],
  [425, [5.5, 28.8, 57.5, 86.3, 143.8, 239.7]]
];

// lib/engineering/pressure-rating.ts
function classPressure({
  ratingClass,
  temperature
}) {
  const column = RATING_CLASSES.indexOf(ratingClass);
  const last = GROUP_1_1_RATINGS.at(-1);
  if (column < 0 || last === void 0 || temperature > last[0]) return null;
  const above = GROUP_1_1_RATINGS.findIndex(([celsius2]) => celsius2 >= temperature);
  const upper = GROUP_1_1_RATINGS[above];
  const lower = GROUP_1_1_RATINGS[Math.max(above - 1, 0)];
  if (upper === void 0 || lower === void 0) return null;
  const span2 = upper[0] - lower[0];
  const part = span2 === 0 ? 0 : Math.max(0, (temperature - lower[0]) / span2);
  const from = lower[1][column] ?? 0;
  return bar(from + ((upper[1][column] ?? from) - from) * part);
}
function ratingPressure(rating) {
  const pn = /\bPN\s*(\d+(?:[.,]\d+)?)/i.exec(rating)?.[1];
  if (pn !== void 0) return plausible(Number(pn.replace(",", ".")));
  const kgf = /(?:\bK\s*(\d+))|(?:\b(\d+)\s*K\b)/i.exec(rating);
  if (kgf !== null) return plausible(Number(kgf[1] ?? kgf[2]) * 0.980665);
  const text = /(?:class|cl\.?|ansi|#)\s*(\d{2,4})/i.exec(rating)?.[1] ?? /\b(\d{2,4})\s*(?:#|lb)/i.exec(rating)?.[1];
  if (text === void 0) return null;
  const iron = { 125: 13.8, 250: 27.6, 800: 136, 400: 68.1, 4500: 766 }[Number(text)];
  return iron === void 0 ? plausible(table(Number(text))) : bar(iron);
}
function table(ratingClass) {
  const column = RATING_CLASSES.indexOf(ratingClass);
  return GROUP_1_1_RATINGS[0]?.[1][column] ?? Number.NaN;
}
function plausible(bars2) {
  return Number.isFinite(bars2) && bars2 > 0 && bars2 <= 1e3 ? bar(bars2) : null;
}

// lib/duty/valve-loads.ts
var VALVE_FACTORS = {
  "wedge gate": [0.28, 0.35, 0.42],
  "flexible wedge gate": [0.28, 0.35, 0.42],
  "double disc gate": [0.24, 0.3, 0.38],
  "parallel slide gate": [0.2, 0.25, 0.3],
  "knife gate": [0.25, 0.35, 0.5],
  globe: [1.05, 1.1, 1.15],
  penstock: [0.2, 0.3, 0.45]
};
var SEAT_SHARES = {
  gate: [0.98, 1, 1.03],
  globe: [0.9, 1, 1.03],
  squeeze: [1, 1.05, 1.15],
  penstock: [1, 1.05, 1.12],
  "quarter turn": [0.95, 1, 1.02],
  keyed: [0.9, 1, 1]
};
function valveLoads(given) {
  const { line, character, sheet } = given;
  const size = line.size ?? lookUp(sheet, { id: "size", name: "Nominal size", value: unknownSize(character) });
  const rated = ratedPressure(given);
  const linePressure = pressureOfLine(given, rated);
  return {
    size,
    rated,
    linePressure,
    differential: differentialPressure(given, linePressure),
    seatDiameter: line.stem.seatDiameter ?? lookUp(sheet, { id: "seat-diameter", name: "Seat diameter", value: seatBySize(size, character) }),
    valveFactor: line.stem.valveFactor ?? lookUp(sheet, { id: "valve-factor", name: "Valve factor", value: factorByType(character) }),
    packingPerDiameter: packingRule(character)
  };
}
function spreadOf(unit, spread, origin) {
  const [low, nominal, high] = spread;
  return known(unit, { low, nominal, high }, origin);
}
function shareOf(base, share2, source2) {
  const basis = base.basis === "assumed" ? "assumed" : "rule of thumb";
  return settle(
    base.unit,
    { low: base.low * share2[0], nominal: base.nominal * share2[1], high: base.high * share2[2] },
    { basis, source: source2 }
  );
}
function unknownSize({ family }) {
  const spread = family === "penstock" ? [0.3, 0.6, 1.2] : family === "keyed" ? [0.02, 0.08, 0.1] : [0.08, 0.15, 0.4];
  return spreadOf("m", spread, {
    basis: "assumed",
    source: `The list gives no size: DN ${spread[0] * 1e3} to DN ${spread[2] * 1e3} is covered.`
  });
}
function ratedPressure({ line, character, sheet }) {
  const text = line.rating?.value;
  const ambient = text === void 0 ? null : ratingPressure(text);
  if (ambient !== null && text !== void 0) {
    const ratingClass = Number(/class\s*(\d+)/i.exec(text)?.[1] ?? Number.NaN);
    const temperature = line.process.temperature;
    const hot = temperature === void 0 ? null : classPressure({ ratingClass, temperature: temperature.nominal });
    return exactly("Pa", Math.min(hot ?? ambient, ambient), {
      basis: "standard",
      source: `Pressure that the rating ${text} stands for (ASME B16.34, EN 1333; iron classes and K ratings from memory).`
    });
  }
  const spread = character.setting === "waterworks" ? [1e6, 16e5, 16e5] : [16e5, 196e4, 511e4];
  const basis = "assumed";
  return lookUp(sheet, {
    id: "rated-pressure",
    name: "Rated pressure",
    value: spreadOf("Pa", spread, {
      basis,
      source: `The list gives no rating: ${spread[0] / 1e5} to ${spread[2] / 1e5} bar is taken, usual for ${character.setting === "waterworks" ? "waterworks" : "plants"}.`
    })
  });
}
function pressureOfLine({ line, character, sheet }, rated) {
  if (line.process.linePressure !== void 0) return line.process.linePressure;
  const stated2 = line.process.differentialPressure;
  if (stated2 !== void 0) {
    const high = Math.max(stated2.high, Math.min(rated.nominal, stated2.high * 1.5));
    return lookUp(sheet, {
      id: "line-pressure",
      name: "Line pressure",
      value: settle(
        "Pa",
        { low: stated2.low, nominal: stated2.nominal, high },
        {
          basis: "assumed",
          source: "Taken from the differential pressure: at least as high, at most half as much again or the rating."
        }
      )
    });
  }
  if (character.family === "penstock")
    return lookUp(sheet, { id: "line-pressure", name: "Water pressure at the door", value: unknownHead() });
  const share2 = character.setting === "waterworks" ? [0.15, 0.35, 0.6] : [0.15, 0.5, 0.85];
  const value = settle(
    "Pa",
    { low: rated.low * share2[0], nominal: rated.nominal * share2[1], high: rated.high * share2[2] },
    {
      basis: "assumed",
      source: `The list gives no pressure: ${share2[0] * 100} to ${share2[2] * 100} % of the rated pressure is taken.`
    }
  );
  return lookUp(sheet, { id: "line-pressure", name: "Line pressure", value });
}
function differentialPressure({ line, character, sheet }, linePressure) {
  if (line.process.differentialPressure !== void 0) return line.process.differentialPressure;
  if (character.family === "penstock") return linePressure;
  const low = line.state.bypass?.value === true ? 0 : 0.3;
  const said4 = line.process.linePressure !== void 0;
  const value = settle(
    "Pa",
    { low: linePressure.low * low, nominal: linePressure.nominal * (said4 ? 0.8 : 1), high: linePressure.high },
    {
      basis: "assumed",
      source: `The differential pressure is not given: ${low === 0 ? "with the by-pass it may be nought, at" : "at"} most the whole line pressure stands across the closed valve.`
    }
  );
  return lookUp(sheet, { id: "differential-pressure", name: "Differential pressure", value });
}
function unknownHead() {
  return spreadOf("Pa", [5e3, 25e3, 6e4], {
    basis: "assumed",
    source: "The list gives no head: 0.5 to 6 m of water at the middle of the door is taken."
  });
}
function seatBySize(size, { family }) {
  return shareOf(size, SEAT_SHARES[family], "Seat diameter by nominal size; common practice, no source.");
}
function factorByType({ type: type2, setting }) {
  const spread = VALVE_FACTORS[type2] ?? (setting === "waterworks" ? [0.22, 0.3, 0.38] : [0.28, 0.35, 0.42]);
  const basis = type2 === "unknown" ? "assumed" : "rule of thumb";
  return spreadOf("1", spread, {
    basis,
    source: "Valve factor by type: 0.3 for wedges, plants argue 0.4 and more; parallel slides 0.2 to 0.25; globes 1.1 (industry guide and a maker\u2019s engineering page, secondary)."
  });
}
function packingRule({ setting }) {
  const spread = setting === "waterworks" ? [1e4, 22e3, 4e4] : [45e3, 8e4, 125e3];
  return spreadOf("1", spread, {
    basis: "rule of thumb",
    source: `Friction of the packing, ${spread[0] / 1e3} to ${spread[2] / 1e3} N for each mm of stem diameter; common practice, no source.`
  });
}

// lib/duty/torque-bounds.ts
var SPOKE_STRESS = spreadOf("Pa", [5e7, 7e7, 12e7], {
  basis: "assumed",
  source: "Bending of cast-iron spokes; common practice, no source."
});
var SPOKE_SHARE = spreadOf("1", [0.042, 0.05, 0.06], {
  basis: "assumed",
  source: "A spoke is about a twentieth of its wheel thick; common practice, no source."
});
function both(kind, torque2) {
  return { kind, directions: DIRECTIONS, torque: torque2 };
}
function strengthLeft({ age }) {
  return age !== null && age >= HOUSE_CONSTANTS.yearsUntilOld.nominal ? HOUSE_CONSTANTS.oldStrength : HOUSE_CONSTANTS.soundStrength;
}
function weakened({ sheet, character }, id, name, bound) {
  const left = strengthLeft(character);
  if (left.low === 1) return bound;
  return calculate(sheet, {
    id,
    name: `${name}, weakened by age`,
    formula: "T = T0\xB7k",
    unit: "N\xB7m",
    source: left.source,
    terms: { bound: term("T0", "bound of a sound valve", bound), left: term("k", "strength that age leaves", left) },
    evaluate: (at2) => at2("bound") * at2("left")
  });
}
function inputBounds(given) {
  const { line } = given;
  const stated2 = line.torque.max;
  const endStop = statedEndStop(line);
  return [
    ...stated2 === void 0 ? [] : [both("stated", stated2)],
    ...endStop === null ? [] : [both("end stop", endStop)],
    ...wheelBound(given),
    ...spokesBound(given),
    ...nutBound(given),
    ...spindleBounds(given)
  ];
}
function statedEndStop({ torque: torque2 }) {
  const text = torque2.endStops;
  const number = text === void 0 ? void 0 : /(\d+(?:[.,]\d+)?)\s*N\s*[·.*⋅]?\s*m/i.exec(text.value)?.[1];
  if (text === void 0 || number === void 0) return null;
  const value = Number(number.replace(",", "."));
  return value > 0 ? exactly("N\xB7m", value, text) : null;
}
function wheelBound({ line, character, sheet, wheel }) {
  if (line.interface.wheelDiameter === void 0 || wheel === null) return [];
  const material = line.interface.wheelMaterial?.value ?? "";
  const strong = /steel|ductile|malleable|forged|sg iron|nodular/i.test(material);
  const strength = strong ? spreadOf("1", [1.4, 2.2, 3], {
    basis: "rule of thumb",
    source: `Wheel of ${material} against a plain cast wheel; common practice, no source.`
  }) : spreadOf("1", [1, 1.6, 2.4], {
    basis: material === "" ? "assumed" : "rule of thumb",
    source: "A cast-iron wheel, the weaker, is taken at its least; common practice, no source."
  });
  const torque2 = calculate(sheet, {
    id: "bound-wheel",
    name: "What the wheel bears",
    formula: "T = F\xB7D/2\xB7k\xB7a",
    unit: "N\xB7m",
    source: "AWWA C504: 200 lbf (890 N) in total at the rim, from memory.",
    terms: {
      pull: term(
        "F",
        "total tangential force at the rim",
        exactly("N", OVERLOAD_PULL, { basis: "standard", source: "AWWA C504, from memory." })
      ),
      wheel: term("D", "wheel diameter", wheel),
      strength: term("k", "strength of the wheel", strength),
      left: term("a", "strength that age leaves", strengthLeft(character))
    },
    evaluate: (at2) => wheelTorque({
      overload: newtons(at2("pull")),
      wheelDiameter: metres(at2("wheel")),
      strength: ratio(at2("strength"))
    }) * at2("left")
  });
  return [both("wheel", torque2)];
}
function spokesBound({ line, character, sheet, wheel }) {
  const spokes = line.interface.wheelSpokes;
  if (spokes === void 0 || line.interface.wheelDiameter === void 0 || wheel === null) return [];
  if (!Number.isFinite(spokes.value) || spokes.value < 1 || spokes.value > 24) return [];
  const torque2 = calculate(sheet, {
    id: "bound-spokes",
    name: "What the spokes bear",
    formula: "T = 2\xB7n\xB7\u03C3\xB7\u03C0\xB7(s\xB7D)\xB3/32\xB7R/(R \u2212 r)\xB7a; R = 0.38\xB7D, r = 0.09\xB7D",
    unit: "N\xB7m",
    source: "Statics of a beam held at both ends; sizes of wheels common practice, no source.",
    terms: {
      spokes: term("n", "spokes", exactly("1", spokes.value, spokes)),
      stress: term("\u03C3", "bending stress allowed", SPOKE_STRESS),
      share: term("s", "spoke against wheel", SPOKE_SHARE),
      wheel: term("D", "wheel diameter", wheel),
      left: term("a", "strength that age leaves", strengthLeft(character))
    },
    evaluate: (at2) => spokeTorque({
      spokes: ratio(at2("spokes")),
      stress: pascals(at2("stress")),
      spokeDiameter: metres(at2("share") * at2("wheel")),
      contactRadius: metres(0.38 * at2("wheel")),
      hubRadius: metres(0.09 * at2("wheel"))
    }) * at2("left")
  });
  return [both("spokes", torque2)];
}
function nutBound({ line, character, sheet }) {
  const nut = line.interface.nut?.acrossFlats;
  if (nut === void 0) return [];
  const wear = line.interface.nutWear?.value ?? "good";
  const left = {
    good: spreadOf("1", [0.9, 1, 1], said2("good")),
    worn: spreadOf("1", [0.5, 0.7, 0.9], said2("worn")),
    rounded: spreadOf("1", [0.2, 0.35, 0.5], said2("rounded"))
  }[wear];
  const torque2 = calculate(sheet, {
    id: "bound-nut",
    name: "What the nut or square bears",
    formula: "T = 0.208\xB7a\xB3\xB70.577\xB7Re/S\xB7w\xB7k",
    unit: "N\xB7m",
    source: "Beer & Johnston, Mechanics of Materials, table 3.1, from memory; wear common practice, no source.",
    terms: {
      side: term("a", "across flats", nut),
      yield: term("Re", "yield stress", HOUSE_CONSTANTS.yieldOfUnknownStem),
      wear: term("w", "what wear leaves", left),
      left: term("k", "strength that age leaves", strengthLeft(character))
    },
    evaluate: (at2) => squareShaftTorque({ side: metres(at2("side")), stress: shear(at2("yield")) }) * at2("wear") * at2("left")
  });
  return [both("nut", torque2)];
}
function said2(wear) {
  return { basis: "rule of thumb", source: `Grip of a ${wear} nut; common practice, no source.` };
}
function spindleBounds({ line, character, sheet }) {
  const isExtended = character.drivenBy.value === "extension spindle";
  const size = line.interface.spindleSize ?? (isExtended ? lookUp(sheet, {
    id: "spindle-size",
    name: "Extension spindle",
    value: spreadOf("m", [0.024, 0.027, 0.032], {
      basis: "assumed",
      source: "The list gives no spindle size: the common sizes are covered, the weaker counts."
    })
  }) : void 0);
  if (size === void 0) return [];
  const shared = {
    size: term("d", "spindle", size),
    yield: term("Re", "yield stress", HOUSE_CONSTANTS.yieldOfSpindle),
    left: term("k", "strength that age leaves", strengthLeft(character))
  };
  const spindle = calculate(sheet, {
    id: "bound-spindle",
    name: "What the extension spindle bears",
    formula: "T = \u03C0\xB7d\xB3/16\xB70.577\xB7Re/S\xB7k",
    unit: "N\xB7m",
    source: "Gere, Mechanics of Materials, section 3.3.",
    terms: shared,
    evaluate: (at2) => solidShaftTorque({ diameter: metres(at2("size")), stress: shear(at2("yield")) }) * at2("left")
  });
  const pin = calculate(sheet, {
    id: "bound-spindle-pin",
    name: "What the pin of the spindle bears",
    formula: "T = \u03C0\xB7(s\xB7d)\xB2/4\xB7d\xB70.577\xB7Re/S\xB7k",
    unit: "N\xB7m",
    source: "Statics of a pin in double shear; its size common practice, no source.",
    terms: { ...shared, share: term("s", "pin against spindle", HOUSE_CONSTANTS.pinShare) },
    evaluate: (at2) => Math.PI * (at2("share") * at2("size")) ** 2 / 4 * at2("size") * shear(at2("yield")) * at2("left")
  });
  return [both("spindle", spindle), both("spindle pin", pin)];
}
function shear(yieldStress2) {
  return allowableShear({ yieldStress: pascals(yieldStress2), safetyFactor: HOUSE_CONSTANTS.strengthFactor.nominal });
}
function handBound({ character, sheet, wheel }) {
  if (wheel !== null) {
    return both(
      "hand force",
      calculate(sheet, {
        id: "bound-hand-force",
        name: "What a person puts on this wheel",
        formula: "T = F\xB7D/2",
        unit: "N\xB7m",
        source: "One total force at the radius; API Spec 6D and MSS SP-91.",
        terms: {
          force: term("F", "total force of a person at the rim", HOUSE_CONSTANTS.handForce),
          wheel: term("D", "wheel diameter", wheel)
        },
        evaluate: (at2) => rimTorque({ force: newtons(at2("force")), wheelDiameter: metres(at2("wheel")) })
      })
    );
  }
  const small = character.type === "stop tap";
  return both(
    "hand force",
    calculate(sheet, {
      id: "bound-hand-force",
      name: "What a person puts on a key",
      formula: "T = 2\xB7(F/2)\xB7r",
      unit: "N\xB7m",
      source: "Two hands, each at the radius, half of the total force each; API Spec 6D and MSS SP-91.",
      terms: {
        force: term("F", "total force of both hands", HOUSE_CONSTANTS.handForce),
        radius: term(
          "r",
          "half of the bar of the key",
          small ? spreadOf("m", [0.1, 0.15, 0.2], {
            basis: "rule of thumb",
            source: "Half of the bar of a stop-tap key; common practice, no source."
          }) : HOUSE_CONSTANTS.keyBarRadius
        )
      },
      evaluate: (at2) => coupleTorque({ forcePerHand: newtons(at2("force") / 2), radius: metres(at2("radius")) })
    })
  );
}

// lib/duty/borne-torque.ts
function raiseGuessedBounds({
  bounds,
  line,
  character,
  sheet
}) {
  const borne = borneTorque({ line, character });
  if (borne === null) return bounds;
  const raised = bounds.map(
    (bound) => isGuessed(bound.torque) && bound.torque.low < borne.torque ? raise(bound, borne) : bound
  );
  const lifted = bounds.filter((bound, index) => bound !== raised[index]);
  if (lifted.length > 0) {
    note(sheet, {
      id: "bound-below-stated-torque",
      severity: "warning",
      about: ["starting_torque", "max_torque"],
      sentence: `By ${lifted.map(({ kind }) => kind).join(", ")} the valve might bear no more than ${lifted.map(({ torque: torque2 }) => Math.round(torque2.low)).join(", ")} N\xB7m, which is guessed, yet it is said to take ${Math.round(borne.said)} N\xB7m: what is said counts, and ${Math.round(borne.torque)} N\xB7m is taken as borne. Ask for the highest torque that is allowed.`,
      source: "house rule: a better basis replaces a worse one"
    });
  }
  return raised;
}
function borneTorque({
  line,
  character
}) {
  const said4 = line.torque.starting ?? line.torque.running;
  if (said4 === void 0 || basisRank(said4.basis) > basisRank("stated") || said4.low <= 0) return null;
  const isOld = strengthLeft(character).low < 1;
  return { said: said4.low, torque: said4.low * (isOld ? 1 : HOUSE_CONSTANTS.borneMargin.nominal) };
}
function isGuessed({ basis }) {
  return basis === "assumed" || basis === "rule of thumb";
}
function raise(bound, { torque: torque2 }) {
  const { low, nominal, high } = bound.torque;
  const source2 = `Raised to what a valve bears that is said to be moved so hard: ${bound.torque.source}`;
  return {
    ...bound,
    torque: settle(
      "N\xB7m",
      { low: Math.max(low, torque2), nominal: Math.max(nominal, torque2), high: Math.max(high, torque2) },
      { basis: bound.torque.basis, source: source2 }
    )
  };
}

// lib/engineering/nut-sizes.ts
var AMERICAN_WRENCH_NUT = {
  shape: "tapered square",
  acrossFlats_mm: 49.2,
  atBase_mm: 50.8,
  source: "ANSI/AWWA C509 wrench nut, 2 in square, from memory."
};
var BURIED_NUTS = [
  AMERICAN_WRENCH_NUT,
  {
    shape: "tapered square",
    acrossFlats_mm: 27,
    atBase_mm: 32,
    source: "Key cap or spindle square about 27 to 32 mm, usual on European buried valves; common practice, no source."
  },
  { shape: "square", acrossFlats_mm: 38, source: "Key cap 38 mm; common practice, no source." }
];
var HYDRANT_NUTS = [
  { shape: "pentagon", acrossFlats_mm: 38, source: "Hydrant pentagon about 1-1/2 in; common practice, no source." },
  {
    shape: "tapered square",
    acrossFlats_mm: 27,
    atBase_mm: 32,
    source: "Spindle square about 27 to 32 mm; common practice, no source."
  },
  { shape: "square", acrossFlats_mm: 30, source: "Pillar hydrant square about 30 mm; common practice, no source." }
];
var STOP_TAP_NUTS = [
  { shape: "square", acrossFlats_mm: 14, source: "Stop-tap square about 14 mm; common practice, no source." },
  { shape: "square", acrossFlats_mm: 19, source: "Stop-tap crutch or square about 19 mm; common practice, no source." }
];
var GEARBOX_NUTS = [
  AMERICAN_WRENCH_NUT,
  ...BURIED_NUTS.slice(1, 2),
  { shape: "square", acrossFlats_mm: 19, source: "Gearbox input square about 19 mm; common practice, no source." }
];

// lib/engineering/straight-lines.ts
function between({ points, x }) {
  const first2 = points[0];
  invariant(first2 !== void 0, "A table to read between holds at least one point.");
  let [lastX, lastY] = first2;
  if (x <= lastX) return lastY;
  for (const [nextX, nextY] of points.slice(1)) {
    invariant(nextX > lastX, "The points of a table come in rising order.");
    if (x <= nextX) return lastY + (nextY - lastY) * (x - lastX) / (nextX - lastX);
    [lastX, lastY] = [nextX, nextY];
  }
  return lastY;
}

// lib/engineering/valve-tables.ts
var GATE_STEMS_MM = [
  [15, 10],
  [25, 14],
  [40, 17.5],
  [50, 19.05],
  [80, 22.23],
  [100, 25.4],
  [150, 28.58],
  [200, 31.75],
  [250, 34.93],
  [300, 38.1],
  [400, 42],
  [500, 48],
  [600, 54],
  [900, 70],
  [1200, 88],
  [2e3, 130]
];
var GATE_STEMS_STANDARD_UP_TO_MM = 152;
var STEM_GROWTH_BY_BAR = [
  [20, 1],
  [52, 1.1],
  [105, 1.28],
  [155, 1.42],
  [260, 1.62],
  [430, 1.9]
];
var WHEELS_MM = [
  [15, 80],
  [25, 110],
  [50, 190],
  [80, 240],
  [100, 270],
  [150, 330],
  [200, 380],
  [250, 430],
  [300, 480],
  [400, 580],
  [500, 650],
  [600, 720],
  [1e3, 850]
];
var WORM_RATIOS = [
  [100, 30],
  [200, 36],
  [350, 50],
  [500, 75],
  [700, 130],
  [1e3, 300],
  [1600, 800],
  [2500, 1500]
];
var MULTI_TURN_GEAR_RATIO = [2, 3, 4];
var GEAR_EFFICIENCY = {
  worm: [0.24, 0.3, 0.38],
  "travelling nut": [0.22, 0.3, 0.4],
  bevel: [0.85, 0.9, 0.95],
  spur: [0.88, 0.93, 0.97]
};

// lib/engineering/gear-reduction.ts
function gearInputTorque({
  outputTorque,
  ratio: ratio2,
  efficiency
}) {
  return newtonMetres(outputTorque / (ratio2 * efficiency));
}
function quarterTurnInputTurns(ratio2) {
  return turns(ratio2 / 4);
}
function gearedTurns({ valveTurns, ratio: ratio2 }) {
  return turns(valveTurns * ratio2);
}

// lib/engineering/quarter-turn-torque.ts
function butterflyTorque({
  size,
  differential,
  seatCoefficient,
  shaftShare,
  friction
}) {
  const bearing = Math.PI / 8 * size ** 2 * differential * (shaftShare * size) * friction;
  return newtonMetres(seatCoefficient * size ** 2 + bearing);
}
function ballTorque({
  size,
  differential,
  seatCoefficient,
  friction
}) {
  return newtonMetres(seatCoefficient * size ** 2 + Math.PI / 4 * size ** 2 * differential * friction * 0.65 * size);
}

// lib/duty/geared-duty.ts
var BUTTERFLY_SEAT = spreadOf("1", [2800, 4e3, 6e3], {
  basis: "rule of thumb",
  source: "Seating torque of a butterfly valve, 2.8 to 6 kN for each m of D\xB2; common practice, no source."
});
var SHAFT_SHARE = spreadOf("1", [0.09, 0.12, 0.15], {
  basis: "rule of thumb",
  source: "Shaft of a butterfly valve against its disc; common practice, no source."
});
var BEARING_FRICTION = spreadOf("1", [0.08, 0.12, 0.17], {
  basis: "rule of thumb",
  source: "Friction of shaft bearings; common practice, no source."
});
var BALL_SEAT = spreadOf("1", [3500, 5e3, 7500], {
  basis: "rule of thumb",
  source: "Seat preload torque of a ball valve; common practice, no source."
});
var PLUG_SEAT = spreadOf("1", [5e3, 8e3, 13e3], {
  basis: "rule of thumb",
  source: "Wedging torque of a plug valve; common practice, no source."
});
var BALL_FRICTION = spreadOf("1", [0.05, 0.1, 0.16], {
  basis: "rule of thumb",
  source: "Friction of ball or plug in its seat; common practice, no source."
});
var MID_STROKE = spreadOf("1", [0.4, 0.6, 0.85], {
  basis: "rule of thumb",
  source: "Torque between the ends against torque at the seat; common practice, no source."
});
var CHANGING_RATIO = spreadOf("1", [0.7, 1, 1.4], {
  basis: "rule of thumb",
  source: "A travelling nut or link has no constant ratio; common practice, no source."
});
function gearing({ line, character, loads, sheet }) {
  const quarter = character.family === "quarter turn";
  const kind = line.torque.gearbox?.value ?? (quarter ? "worm" : "bevel");
  const said4 = line.torque.gearbox !== void 0;
  const efficiency = line.torque.gearEfficiency ?? lookUp(sheet, {
    id: "gear-efficiency",
    name: "Efficiency of the gearbox",
    value: spreadOf("1", GEAR_EFFICIENCY[kind], {
      basis: said4 ? "rule of thumb" : "assumed",
      source: `Efficiency of ${kind} gearboxes, bearings included; common practice, no source.`
    })
  });
  return { kind, efficiency, ratio: line.torque.gearRatio ?? gearRatio({ line, loads, sheet, kind, quarter }) };
}
function gearRatio({
  line,
  loads,
  sheet,
  kind,
  quarter
}) {
  const stated2 = line.torque.turns;
  if (quarter && stated2 !== void 0) {
    const widen = kind === "travelling nut" ? CHANGING_RATIO : HOUSE_CONSTANTS.soundStrength;
    return calculate(sheet, {
      id: "gear-ratio",
      name: "Ratio of the gearbox",
      formula: kind === "travelling nut" ? "i = 4\xB7N\xB7k" : "i = 4\xB7N",
      unit: "1",
      source: "Geometry of a quarter turn.",
      terms: { turns: term("N", "stated turns", stated2), widen: term("k", "change along the stroke", widen) },
      evaluate: (at3) => 4 * at3("turns") * at3("widen")
    });
  }
  const at2 = (size, factor) => between({ points: WORM_RATIOS, x: size * 1e3 }) * factor;
  const value = quarter ? settle(
    "1",
    { low: at2(loads.size.low, 0.55), nominal: at2(loads.size.nominal, 1), high: at2(loads.size.high, 1.8) },
    {
      basis: "assumed",
      source: "Ratio of the worm gearbox by size of valve, half to nearly double; common practice, no source."
    }
  ) : spreadOf("1", MULTI_TURN_GEAR_RATIO, {
    basis: "assumed",
    source: "Gears on gate valves, 2:1 to 4:1 by size; from memory."
  });
  return lookUp(sheet, { id: "gear-ratio", name: "Ratio of the gearbox", value });
}
function quarterTurnTorque({ line, character, loads, sheet }) {
  if (line.torque.outputTorque !== void 0) return line.torque.outputTorque;
  const size = term("D", "nominal size", loads.size);
  const pressure = term("\u0394p", "differential pressure", loads.differential);
  if (character.type === "butterfly") {
    return calculate(sheet, {
      id: "shaft-torque",
      name: "Torque at the valve\u2019s shaft",
      formula: "T = cs\xB7D\xB2 + \u03C0/8\xB7D\xB2\xB7\u0394p\xB7(k\xB7D)\xB7f",
      unit: "N\xB7m",
      source: "Form as in AWWA M49, from memory; coefficients common practice, no source.",
      terms: {
        size,
        pressure,
        seat: term("cs", "seating coefficient", BUTTERFLY_SEAT),
        shaft: term("k", "shaft against disc", SHAFT_SHARE),
        friction: term("f", "bearing friction", BEARING_FRICTION)
      },
      evaluate: (at2) => butterflyTorque({
        size: metres(at2("size")),
        differential: pascals(at2("pressure")),
        seatCoefficient: ratio(at2("seat")),
        shaftShare: ratio(at2("shaft")),
        friction: ratio(at2("friction"))
      })
    });
  }
  return calculate(sheet, {
    id: "shaft-torque",
    name: "Torque at the valve\u2019s shaft",
    formula: "T = cs\xB7D\xB2 + \u03C0/4\xB7D\xB2\xB7\u0394p\xB7f\xB70.65\xB7D",
    unit: "N\xB7m",
    source: "Common practice, no source.",
    terms: {
      size,
      pressure,
      seat: term("cs", "seating coefficient", character.type === "plug" ? PLUG_SEAT : BALL_SEAT),
      friction: term("f", "seat friction", BALL_FRICTION)
    },
    evaluate: (at2) => ballTorque({
      size: metres(at2("size")),
      differential: pascals(at2("pressure")),
      seatCoefficient: ratio(at2("seat")),
      friction: ratio(at2("friction"))
    })
  });
}
function quarterTurnAtShaft(given, direction) {
  const { atSeat, factors, sheet } = given;
  const running = calculate(sheet, {
    id: `running-torque-${direction}`,
    name: `Running torque at the shaft, ${direction}`,
    formula: "Tr = T\xB7k",
    unit: "N\xB7m",
    source: MID_STROKE.source,
    terms: { seat: term("T", "torque at the seat", atSeat), share: term("k", "between the ends", MID_STROKE) },
    evaluate: (at2) => at2("seat") * at2("share")
  });
  const starting = calculate(sheet, {
    id: `starting-torque-${direction}`,
    name: `Starting torque at the shaft, ${direction}`,
    formula: "T0 = T\xB7(1 + (k \u2212 1)/2)",
    unit: "N\xB7m",
    source: "The torque at the seat already holds the unseating; half of the starting surplus is added.",
    terms: { seat: term("T", "torque at the seat", atSeat), factor: term("k", "starting factor", factors[direction]) },
    evaluate: (at2) => at2("seat") * (1 + (at2("factor") - 1) / 2)
  });
  return { starting, running, thrust: null };
}
function atGearInput({
  torque: torque2,
  gear,
  sheet,
  direction
}) {
  const changes = gear.kind === "travelling nut";
  const refer = (what) => calculate(sheet, {
    id: `${what}-torque-input-${direction}`,
    name: `${what === "starting" ? "Starting" : "Running"} torque at the gearbox input, ${direction}`,
    unit: "N\xB7m",
    formula: changes ? "Tin = k\xB7T/(i\xB7\u03B7)" : "Tin = T/(i\xB7\u03B7)",
    source: "Wentzell, Machine Design, ch. 13.",
    terms: {
      torque: term("T", `${what} torque at the output`, torque2[what]),
      ratio: withEffect(torque2[what].low < 0 ? "either" : "lowers", term("i", "ratio", gear.ratio)),
      efficiency: withEffect(torque2[what].low < 0 ? "either" : "lowers", term("\u03B7", "efficiency", gear.efficiency)),
      changing: withEffect(
        torque2[what].low < 0 ? "either" : "raises",
        term("k", "change along the stroke", changes ? CHANGING_RATIO : HOUSE_CONSTANTS.soundStrength)
      )
    },
    evaluate: (at2) => gearInputTorque({
      outputTorque: newtonMetres(at2("torque")),
      ratio: ratio(at2("ratio")),
      efficiency: ratio(at2("efficiency"))
    }) * at2("changing")
  });
  return { starting: refer("starting"), running: refer("running"), thrust: torque2.thrust };
}
function quarterTurnTurns({ gear, sheet }) {
  const changes = gear.kind === "travelling nut";
  return calculate(sheet, {
    id: "turns-of-the-input",
    name: "Turns of the gearbox input for a quarter turn",
    formula: changes ? "N = k\xB7i/4" : "N = i/4",
    unit: "turn",
    source: changes ? CHANGING_RATIO.source : "Geometry; a 40:1 worm takes 10 turns.",
    terms: {
      ratio: term("i", "ratio", gear.ratio),
      changing: term("k", "change along the stroke", changes ? CHANGING_RATIO : HOUSE_CONSTANTS.soundStrength)
    },
    evaluate: (at2) => quarterTurnInputTurns(ratio(at2("ratio"))) * at2("changing")
  });
}
function multiTurnTurns({
  stemTurns,
  gear,
  sheet
}) {
  return calculate(sheet, {
    id: "turns-of-the-input",
    name: "Turns of the gearbox input",
    formula: "Nin = N\xB7i",
    unit: "turn",
    source: "Geometry.",
    terms: { turns: term("N", "turns of the stem", stemTurns), ratio: term("i", "ratio", gear.ratio) },
    evaluate: (at2) => gearedTurns({ valveTurns: turns(at2("turns")), ratio: ratio(at2("ratio")) })
  });
}
function bareQuarterTurns(loads) {
  return settle(
    "turn",
    { low: 0.23, nominal: 0.25, high: 0.27 },
    { basis: worstBasis(["computed", loads.size.basis]), source: "A quarter turn without a gearbox." }
  );
}
function gearWheel(loads) {
  const nominal = Math.min(0.2 + 0.4 * loads.size.nominal, 0.7);
  const at2 = (factor) => Math.round(nominal * factor * 200) / 200;
  return settle(
    "m",
    { low: at2(0.75), nominal: at2(1), high: at2(1.35) },
    {
      basis: "assumed",
      source: "Wheel of the gearbox by size of valve, to the next 5 mm; common practice, no source."
    }
  );
}

// lib/duty/grip.ts
var WHEEL_STEP_MM = 5;
function wheelOf({ line, character, loads }) {
  const drive = character.drivenBy.value;
  if (drive !== "handwheel" && drive !== "gearbox wheel" && drive !== "pillar") return null;
  if (line.interface.wheelDiameter !== void 0) return line.interface.wheelDiameter;
  if (drive === "gearbox wheel") return gearWheel(loads);
  const at2 = (size, factor) => Math.round(between({ points: WHEELS_MM, x: size * 1e3 }) * factor / WHEEL_STEP_MM) * WHEEL_STEP_MM / 1e3;
  const basis = loads.size.basis === "assumed" ? "assumed" : "rule of thumb";
  return settle(
    "m",
    { low: at2(loads.size.low, 0.75), nominal: at2(loads.size.nominal, 1), high: at2(loads.size.high, 1.3) },
    { basis, source: "Handwheel by size of valve; common practice, no source." }
  );
}
function gripOf(given) {
  const { line, character, stem } = given;
  const drive = character.drivenBy.value;
  const rises2 = risesThrough(given);
  const shared = {
    wheelRises: wheelRises(given),
    stemRisesThroughWheel: rises2,
    ...rises2 === "no" ? {} : protrusion(given),
    ...stem === null ? {} : { stemDiameter: stem.diameter, travel: stem.travel }
  };
  switch (drive) {
    case "handwheel":
    case "gearbox wheel":
      return { kind: "wheel", ...wheelFacts(given), ...shared };
    case "pillar":
      return line.interface.nut === void 0 ? {
        kind: "wheel",
        remark: "A pillar: its wheel or crank is taken; say whether the crank comes off and what square is under it.",
        ...wheelFacts(given),
        ...shared
      } : { kind: "nut", ...nutFacts(given), ...shared };
    case "nut":
    case "square":
    case "key cap":
    case "gearbox nut":
    case "extension spindle":
      return { kind: "nut", ...nutFacts(given), ...shared };
    case "chain wheel":
      return {
        kind: "none",
        remark: "A chain wheel is pulled from below; nothing can sit on it. Take the chain off and say what is behind the wheel.",
        ...shared
      };
    case "actuator hand drive":
      return {
        kind: "none",
        remark: "The hand drive belongs to another actuator: isolate and lock that actuator first, then follow its maker\u2019s limits for its hand drive.",
        ...shared
      };
  }
}
function wheelFacts(given) {
  const { line } = given;
  const diameter = wheelOf(given);
  const spokes = line.interface.wheelSpokes?.value;
  const sound = spokes !== void 0 && Number.isFinite(spokes) && spokes >= 1 && spokes <= 24 ? Math.round(spokes) : void 0;
  const many = (diameter?.nominal ?? 0.3) > 0.5 ? { low: 4, high: 8 } : { low: 3, high: 6 };
  return {
    ...diameter === null ? {} : { wheelDiameter: diameter },
    wheelSpokes: sound === void 0 ? many : { low: sound, high: sound },
    wheelDish: line.interface.wheelDish ?? spreadOf("\xB0", [0, 10, 20], {
      basis: "assumed",
      source: "The list gives no dish: a flat to a moderately dished wheel is covered."
    })
  };
}
function nutFacts(given) {
  const { line, character } = given;
  const usual = usualNuts(character, line);
  const shape = line.interface.nutShape?.value;
  const nut = line.interface.nut;
  const sizes = nut === void 0 ? usual.map(asSize) : [nut.acrossFlats];
  const depth = line.place.depthToNut ?? unknownDepth(character);
  const spoken2 = shape ?? (nut === void 0 ? soleShape(usual) : nut.acrossFlatsAtBase === void 0 ? void 0 : "tapered square");
  return {
    ...spoken2 === void 0 ? {} : { nutShape: spoken2 },
    nutSizes: sizes,
    ...depth === null ? {} : { depthToNut: depth }
  };
}
function usualNuts({ type: type2, drivenBy: drivenBy2 }, line) {
  if (type2 === "hydrant") return HYDRANT_NUTS;
  if (type2 === "stop tap") return STOP_TAP_NUTS;
  const all = drivenBy2.value === "gearbox nut" ? GEARBOX_NUTS : BURIED_NUTS;
  const shape = line.interface.nutShape?.value;
  const matching = all.filter((nut) => nut.shape === shape);
  return matching.length > 0 ? matching : all;
}
function soleShape(nuts) {
  const [first2] = nuts;
  return first2 !== void 0 && nuts.every(({ shape }) => shape === first2.shape) ? first2.shape : void 0;
}
function asSize({ acrossFlats_mm, source: source2 }) {
  return exactly("m", acrossFlats_mm / 1e3, {
    basis: "assumed",
    source: `The list gives no nut size, so the common ones are covered: ${source2}`
  });
}
function unknownDepth({ buried, setting, drivenBy: drivenBy2, type: type2 }) {
  if (buried)
    return spreadOf("m", [0.75, 1, 1.35], {
      basis: "assumed",
      source: "The list gives no depth: cover of 0.75 to 1.35 m is usual (UK water practice; main cover 0.7 to 1.1 m in North Shore City, IDSM 2009)."
    });
  if (setting === "waterworks" && drivenBy2.basis === "assumed" && drivenBy2.value !== "gearbox nut") {
    const shallow = type2 === "stop tap" || type2 === "hydrant";
    return spreadOf("m", shallow ? [0.15, 0.6, 1] : [0.3, 0.9, 1.35], {
      basis: "assumed",
      source: "Whether the valve is buried is not given: a chamber or a usual cover is covered."
    });
  }
  return null;
}
function risesThrough(given) {
  const { character, line } = given;
  if (character.family === "quarter turn" || character.family === "keyed") return "no";
  if (character.geared || wheelOf(given) === null) return "no";
  const { value, basis } = character.stemKind;
  const sure = basis !== "assumed" || line.interface.stemProtrusion !== void 0;
  if (value === "rising through the wheel") return sure ? "yes" : "maybe";
  if (sure) return "no";
  const onWheel2 = character.drivenBy.value === "handwheel" || character.drivenBy.value === "pillar" || character.drivenBy.value === "gearbox wheel";
  return onWheel2 && character.family !== "globe" ? "maybe" : "no";
}
function wheelRises({ character }) {
  if (character.family === "quarter turn" || character.family === "keyed" || character.geared) return "no";
  const { value, basis } = character.stemKind;
  if (value === "rising with the wheel") return basis === "assumed" ? "maybe" : "yes";
  return basis === "assumed" && (character.family === "globe" || character.family === "squeeze") && character.drivenBy.value === "handwheel" ? "maybe" : "no";
}
function protrusion({ line, stem }) {
  if (stem === null) return {};
  const { travel: travel2 } = stem;
  const given = line.interface.stemProtrusion;
  if (given === void 0) {
    return {
      stemProtrusion: settle(
        "m",
        { low: travel2.low * 0.9, nominal: travel2.nominal + 0.04, high: travel2.high + 0.12 },
        {
          basis: "assumed",
          source: "The list gives no protrusion: the travel and a little more is taken for the open valve."
        }
      )
    };
  }
  const at2 = line.interface.protrusionMeasuredAt?.value;
  if (at2 === "open") return { stemProtrusion: given };
  const low = at2 === "closed" ? given.low + travel2.low : given.low;
  const source2 = at2 === "closed" ? "Measured at the closed valve: the travel comes on top." : "Whether it was measured open or closed is not given: the travel may come on top.";
  return {
    stemProtrusion: settle(
      "m",
      { low, nominal: given.nominal + travel2.nominal, high: given.high + travel2.high },
      { basis: at2 === "closed" ? "computed" : "assumed", source: source2 }
    )
  };
}

// lib/duty/line-findings.ts
var COMMON = "common practice, no source";
function noteFindings(given) {
  stateFindings(given);
  trapFindings(given);
  methodFindings(given);
  stemFindings(given);
  doubtFindings(given);
  windowFindings(given);
}
function say(sheet, id, finding) {
  const { severity, about, sentence, source: source2 = COMMON } = finding;
  const whole3 = { id, severity, about, sentence, source: source2 };
  note(sheet, whole3);
}
function stateFindings({ line, character, sheet }) {
  if (line.state.condition?.value === "seized") {
    say(sheet, "valve-seized", {
      severity: "refusal",
      about: ["condition"],
      sentence: "The valve is said to be seized: it goes to the Desk, who agree with the owner what may be risked; it is not planned as a valve that turns.",
      source: "house rule"
    });
  }
  if (line.torque.closes === void 0) {
    say(sheet, "closing-direction-unknown", {
      severity: "warning",
      about: ["closes"],
      sentence: "Which way the valve closes is not given and is never taken as clockwise: try gently by hand first and write down what the wheel or nut does.",
      source: "house rule"
    });
  }
  const age = character.age;
  if (age !== null && age >= HOUSE_CONSTANTS.yearsUntilOld.nominal) {
    say(sheet, "old-weaker-than-table", {
      severity: "warning",
      about: ["age"],
      sentence: `The valve is ${age} years old: old and corroded parts are weaker than any table, so the bounds are lowered to ${HOUSE_CONSTANTS.oldStrength.low * 100} to 100 %. A stated highest torque may no longer hold either.`
    });
  } else if (line.state.condition?.value === "stiff") {
    say(sheet, "stiff-weaker-than-table", {
      severity: "note",
      about: ["condition"],
      sentence: "The valve is stiff: corrosion that makes it stiff also makes it weaker than any table. Start low, work to and fro, raise in steps."
    });
  }
  if (line.valveType === void 0 || line.valveType.value === "unknown") {
    say(sheet, "valve-type-assumed", {
      severity: "warning",
      about: ["valve_type"],
      sentence: `The kind of valve is not given and is taken as a gate valve in ${character.setting === "plant" ? "a plant" : "waterworks"}: a quarter-turn valve would need quite another drive. Ask.`
    });
  }
  if (line.size === void 0)
    say(sheet, "size-unknown", {
      severity: "warning",
      about: ["size"],
      sentence: "The size is not given: the ranges cover the usual sizes and are too wide to rely on. Ask for the nominal size first."
    });
  if (line.interface.drivenBy === void 0)
    say(sheet, "drive-assumed", { severity: "note", about: ["driven_by"], sentence: character.drivenBy.source });
}
function trapFindings({ line, character, sheet }) {
  const { type: type2 } = character;
  const hot = (line.process.temperature?.high ?? 0) >= 90 || /steam|condensate/i.test(line.process.medium?.value ?? "");
  const wedge2 = type2 === "wedge gate" || type2 === "flexible wedge gate" || type2 === "gate" && character.setting === "plant";
  if (hot && wedge2) {
    say(sheet, "thermal-binding", {
      severity: "warning",
      about: ["valve_type", "temperature"],
      sentence: "A wedge that was closed hot can be clamped by its cooling body. Warm it, do not force it: no torque in these figures allows for it.",
      source: "US NRC Generic Letter 95-07 (pressure locking and thermal binding), from memory."
    });
  }
  if (type2 === "flexible wedge gate" || type2 === "double disc gate" || type2 === "parallel slide gate" && hot) {
    say(sheet, "pressure-locking", {
      severity: "warning",
      about: ["valve_type"],
      sentence: "Pressure shut in between the discs or in the bonnet can lock this kind of valve. Vent or equalise it, do not force it: no torque in these figures allows for it.",
      source: "US NRC Generic Letter 95-07 (pressure locking and thermal binding), from memory."
    });
  }
}
function methodFindings({ line, character, sheet }) {
  const { type: type2 } = character;
  if (type2 === "parallel slide gate" || type2 === "knife gate" || type2 === "penstock" || type2 === "double disc gate") {
    say(sheet, "position-seated", {
      severity: "note",
      about: ["valve_type"],
      sentence: "This kind of valve shuts by position: stop by count, never by torque."
    });
  }
  if (character.geared) {
    say(sheet, "end-stops-not-under-power", {
      severity: "note",
      about: ["gearbox"],
      sentence: "The end stops of the gearbox are not to be met under power: stop short by count and finish by hand."
    });
    if (line.torque.gearbox?.value === "travelling nut")
      say(sheet, "ratio-not-constant", {
        severity: "note",
        about: ["gearbox"],
        sentence: "A travelling-nut gearbox has no constant ratio: turns are a wide range unless they are stated, and the torque changes along the stroke."
      });
    if (line.torque.gearbox === void 0)
      say(sheet, "gearbox-assumed", {
        severity: "warning",
        about: ["gearbox", "gear_ratio"],
        sentence: "A gearbox is taken to be there, but neither its kind nor its ratio is given for certain: read its nameplate."
      });
    if (line.torque.flange !== void 0)
      say(sheet, "flange-is-a-bound-only", {
        severity: "note",
        about: ["flange"],
        sentence: "The flange bounds what may pass; it says nothing of what the valve needs, nor of its end stops.",
        source: "ISO 5210 and ISO 5211."
      });
  } else if (character.family === "quarter turn") {
    say(sheet, "quarter-turn-without-gearbox", {
      severity: "warning",
      about: ["valve_type", "gearbox"],
      sentence: "A quarter-turn valve without a gearbox shuts in a quarter of a turn: a powered drive is far too fast for it. Turn it by hand or fit a gearbox."
    });
  }
  const dp = line.process.differentialPressure;
  const pressure = line.process.linePressure;
  if (dp !== void 0 && pressure !== void 0 && dp.nominal > pressure.nominal * 1.001) {
    say(sheet, "differential-above-line-pressure", {
      severity: "note",
      about: ["differential_pressure", "line_pressure"],
      sentence: `The differential pressure given (${bars(dp)} bar) is above the line pressure given (${bars(pressure)} bar); both are used as they stand. Check them.`
    });
  }
}
function stemFindings({ line, thread, sheet, closing, opening }) {
  if (thread === null) return;
  const guessed = thread.lead.basis === "rule of thumb" || thread.lead.basis === "assumed";
  const mayDrop = (closing.thrust?.low ?? 0) < 0 || (opening.thrust?.low ?? 0) < 0;
  if (thread.selfLocking === "no") {
    say(sheet, "stem-overhauls", {
      severity: "warning",
      about: ["stem_thread", "thread_friction"],
      sentence: "The thread is not self-locking: the load can turn the stem back. Never take the drive off under load.",
      source: "Shigley\u2019s Mechanical Engineering Design, eq. 8-3."
    });
  } else if (thread.selfLocking === "depends" && (mayDrop || !guessed)) {
    say(sheet, "self-locking-depends", {
      severity: mayDrop ? "warning" : "note",
      about: ["stem_thread", "thread_friction"],
      sentence: "Whether the thread holds itself depends on its friction: treat it as one that can turn back, and do not take the drive off under load.",
      source: "Shigley\u2019s Mechanical Engineering Design, eq. 8-3."
    });
  }
  if (closing.thrust !== null && closing.thrust.low < 0 && line.valveType?.value === "penstock") {
    say(sheet, "closing-may-overhaul", {
      severity: thread.selfLocking === "yes" ? "note" : "warning",
      about: ["valve_type"],
      sentence: `When closing, the weight of the door may pull the stem (thrust down to ${(closing.thrust.low / 1e3).toFixed(1)} kN): lower it under control.`,
      source: "Statics of a sliding door."
    });
  }
}
function doubtFindings({ opening, closing, wheel, sheet, line }) {
  if (wheel === null || line.interface.drivenBy?.value === "actuator hand drive") return;
  const worst = opening.starting.nominal >= closing.starting.nominal ? opening : closing;
  const pull = rimForce({ torque: worst.starting.nominal, wheelDiameter: wheel.nominal });
  const times2 = pull / HIGHEST_DESIGN_PULL;
  if (times2 < HOUSE_CONSTANTS.handForceQuestion.nominal) return;
  say(sheet, "hand-force-question", {
    severity: "warning",
    about: ["wheel_diameter", "starting_torque"],
    sentence: `Is this valve really turned by hand? At its wheel of about ${Math.round(wheel.nominal * 1e3)} mm it would take ${Math.round(pull / 10) * 10} N, ${times2.toFixed(1)} times what a wheel should ask of a person (360 N). Check size, pressure and gearbox.`,
    source: "API Spec 6D, section 4.12 (360 N)."
  });
}
function windowFindings({ opening, closing, sheet }) {
  const empty = [
    ["opening", opening],
    ["closing", closing]
  ];
  for (const [direction, duty] of empty) {
    if (duty.limiter !== null) continue;
    const impossible = duty.starting.low > duty.neverExceed.torque.high;
    const numbers = `starting takes ${torque(duty.starting)} N\xB7m, the valve must never see more than ${torque(duty.neverExceed.torque)} N\xB7m (${duty.neverExceed.kind})`;
    say(sheet, `limiter-window-empty-${direction}`, {
      severity: impossible ? "refusal" : "warning",
      about: ["starting_torque", "max_torque"],
      sentence: impossible ? `It cannot be moved safely when ${direction}: ${numbers}.` : `It may not move at the torque allowed when ${direction}: ${numbers}; to be agreed before hire.`,
      source: "house rule: limiter window"
    });
  }
}
function noteDisagreement(sheet, given) {
  const { id, about, what, stated: stated2, computed, unit } = given;
  const slack = HOUSE_CONSTANTS.disagreement.nominal;
  const apart = stated2.low > computed.high * slack || stated2.high < computed.low / slack;
  if (!apart) return;
  const text = (value) => value.low === value.high ? `${short(value.nominal)}` : `${short(value.low)} to ${short(value.high)}`;
  say(sheet, id, {
    severity: "warning",
    about,
    sentence: `The ${what} given is ${text(stated2)} ${unit}, the calculation gives ${text(computed)} ${unit}; the one given is used. Check which is right.`,
    source: computed.source
  });
}
function short(value) {
  return Math.abs(value) >= 100 ? String(Math.round(value)) : value.toPrecision(3).replace(/\.?0+$/, "");
}
function torque(value) {
  return value.low === value.high ? short(value.low) : `${short(value.low)} to ${short(value.high)}`;
}
function bars(value) {
  return short(value.nominal / 1e5);
}

// lib/duty/measure-first.ts
var LEAST_GAIN = 0.02;
var ASK_FOR_CEILING = "Ask the maker or the owner for the highest torque that the valve may see.";
var MEASURED = { basis: "measured", source: "Tried out: as if it had been measured." };
function measureFirst({
  line,
  duty,
  steps,
  tryOut
}) {
  const byId = new Map(steps.map((step) => [step.id, step.result]));
  const likely = (id) => byId.get(id) ?? null;
  const now = width(duty);
  let best = typeDoubt({ line, duty, tryOut });
  for (const { sentence, apply } of CANDIDATES) {
    const tried = apply(line, likely);
    if (tried === null) continue;
    const gain = now - width(tryOut(tried));
    if (gain > LEAST_GAIN && (best === null || gain > best.gain)) best = { gain, sentence };
  }
  const ceiling = ceilingGain({ line, duty });
  return ceiling > LEAST_GAIN && ceiling > (best?.gain ?? 0) ? ASK_FOR_CEILING : best?.sentence ?? null;
}
function ceilingGain({ line, duty }) {
  if (line.torque.max !== void 0) return 0;
  const { low, nominal, high } = duty.opening.neverExceed.torque;
  return span({ low, high }) - span({ low, high: nominal });
}
function typeDoubt({
  line,
  duty,
  tryOut
}) {
  if (line.valveType !== void 0 && line.valveType.value !== "unknown") return null;
  const others = ["globe", "butterfly"].map(
    (type2) => tryOut({ ...line, valveType: { value: type2, ...MEASURED } })
  );
  const over2 = (pick) => {
    const ranges = [duty, ...others].map(pick);
    return span({ low: Math.min(...ranges.map(({ low }) => low)), high: Math.max(...ranges.map(({ high }) => high)) }) - span(pick(duty));
  };
  const gain = over2((one2) => one2.opening.starting) + over2((one2) => one2.closing.starting) + over2((one2) => one2.opening.neverExceed.torque) + over2((one2) => one2.turns);
  return gain > LEAST_GAIN ? { gain, sentence: "Ask what kind of valve it is: gate, globe, butterfly or another." } : null;
}
function span({ low, high }) {
  return Math.log(Math.max(high, 0.5) / Math.max(low, 0.5));
}
function width(duty) {
  return span(duty.opening.starting) + span(duty.closing.starting) + span(duty.opening.neverExceed.torque) + span(duty.turns);
}
function exact(unit, value) {
  const at2 = quantity(value.nominal);
  return known(unit, { low: at2, nominal: at2, high: at2 }, MEASURED);
}
var CANDIDATES = [
  {
    sentence: "Ask for the nominal size: it is cast on the body.",
    apply: (line, likely) => {
      const size = likely("size");
      return line.size !== void 0 || size === null ? null : { ...line, size: exact("m", size) };
    }
  },
  {
    sentence: "Read the pressure on both sides of the valve: the difference drives the torque.",
    apply: (line, likely) => {
      const pressure = likely("differential-pressure") ?? likely("line-pressure");
      return line.process.differentialPressure !== void 0 || pressure === null ? null : {
        ...line,
        process: {
          ...line.process,
          differentialPressure: exact("Pa", pressure),
          linePressure: line.process.linePressure ?? exact("Pa", pressure)
        }
      };
    }
  },
  {
    sentence: "Measure the stem\u2019s diameter and the lead of its thread (travel in one turn).",
    apply: (line, likely) => {
      const diameter = line.stem.diameter ?? likely("stem-diameter");
      const lead = likely("lead");
      if (line.stem.thread !== void 0 || diameter === null || lead === null) return null;
      const thread = {
        form: "trapezoidal",
        majorDiameter_m: diameter.nominal,
        pitch_m: lead.nominal,
        designation: "tried"
      };
      return {
        ...line,
        stem: { ...line.stem, diameter: exact("m", diameter), thread: { value: thread, ...MEASURED } }
      };
    }
  },
  {
    sentence: "Ask when it was last moved and whether it turns freely.",
    apply: (line) => line.state.condition === void 0 ? {
      ...line,
      state: {
        ...line.state,
        condition: { value: "free", ...MEASURED },
        lastOperated: line.state.lastOperated ?? { value: 1, ...MEASURED }
      }
    } : null
  },
  {
    sentence: "Count the turns of a full stroke.",
    apply: (line, likely) => {
      const turns2 = likely("turns-of-the-input") ?? likely("turns-by-size-rule") ?? likely("turns-of-the-stem");
      return line.torque.turns !== void 0 || turns2 === null ? null : { ...line, torque: { ...line.torque, turns: exact("turn", turns2) } };
    }
  },
  {
    sentence: "Read the gearbox\u2019s nameplate: kind, ratio and efficiency.",
    apply: (line, likely) => {
      const ratio2 = likely("gear-ratio");
      const efficiency = likely("gear-efficiency");
      if (ratio2 === null && efficiency === null) return null;
      return {
        ...line,
        torque: {
          ...line.torque,
          ...ratio2 === null ? {} : { gearRatio: exact("1", ratio2) },
          ...efficiency === null ? {} : { gearEfficiency: exact("1", efficiency) }
        }
      };
    }
  },
  {
    sentence: "Ask the valve\u2019s maker for its shaft torque.",
    apply: (line, likely) => {
      const torque2 = likely("shaft-torque");
      return line.torque.outputTorque !== void 0 || torque2 === null ? null : { ...line, torque: { ...line.torque, outputTorque: exact("N\xB7m", torque2) } };
    }
  }
];

// lib/engineering/limiter-window.ts
function limiterWindow({
  startingHigh,
  neverExceedLow,
  margin,
  error,
  overshoot
}) {
  invariant(error >= 0 && error < 1, "The error of a limiter is a share below one.");
  return {
    low: newtonMetres(startingHigh * margin / (1 - error)),
    high: newtonMetres((neverExceedLow - overshoot) / (1 + error))
  };
}
function limiterMarks({
  torque: torque2,
  neverExceedLow,
  margin,
  limiter,
  factor,
  stopAt
}) {
  invariant(limiter.step > 0, "A limiter is set in steps above nought.");
  const needed = torque2.high * margin / ((1 - limiter.error) * factor.low);
  const allowed = Math.min(limiter.highest, (neverExceedLow / factor.high - limiter.overshoot) / (1 + limiter.error));
  const most = stepDown(allowed, limiter.step);
  const lowest = stepUp(limiter.lowest, limiter.step);
  if (most < limiter.lowest) return null;
  const ceiling = stopAt === "needed" ? Math.max(lowest, Math.min(most, stepUp(needed, limiter.step))) : most;
  const start = Math.min(ceiling, Math.max(lowest, stepDown(torque2.low / factor.high, limiter.step)));
  return {
    start: newtonMetres(start),
    step: limiter.step,
    ceiling: newtonMetres(ceiling),
    atValve: { start: newtonMetres(start * factor.high), ceiling: newtonMetres(ceiling * factor.high) },
    coversStarting: needed <= ceiling + WHOLE_STEP_SLACK * limiter.step
  };
}
var WHOLE_STEP_SLACK = 1e-9;
function stepDown(value, step) {
  return Math.floor(value / step + WHOLE_STEP_SLACK) * step;
}
function stepUp(value, step) {
  return Math.ceil(value / step - WHOLE_STEP_SLACK) * step;
}

// lib/duty/never-exceed.ts
function neverExceed({
  bounds,
  direction,
  sheet
}) {
  const valid = bounds.filter((bound) => bound.directions.includes(direction));
  const [first2, ...rest] = valid;
  if (first2 === void 0)
    return {
      kind: "none known",
      directions: [direction],
      torque: settle("N\xB7m", { low: 0, nominal: 0, high: 0 }, { basis: "assumed", source: "No bound is known." })
    };
  const lowest = rest.reduce((least2, bound) => bound.torque.low < least2.torque.low ? bound : least2, first2);
  const least = (end) => Math.min(...valid.map(({ torque: torque3 }) => torque3[end]));
  const others = valid.length - 1;
  const torque2 = settle(
    "N\xB7m",
    { low: least("low"), nominal: least("nominal"), high: least("high") },
    {
      basis: lowest.torque.basis,
      source: `Lowest of ${valid.length} bound${others === 0 ? "" : "s"}, here ${lowest.kind}: ${lowest.torque.source}`
    }
  );
  sheet.steps?.push({
    id: `never-exceed-${direction}`,
    name: `What the valve must never see, ${direction}`,
    formula: "lowest of all bounds",
    source: "The lowest bound that is known counts.",
    inputs: valid.map(({ kind, torque: { low, nominal, high, unit, basis, source: source2 } }, index) => ({
      symbol: `T${index + 1}`,
      name: kind,
      low,
      nominal,
      high,
      unit,
      basis,
      source: source2
    })),
    result: torque2
  });
  return { kind: lowest.kind, directions: [direction], torque: torque2 };
}
function idealWindow({
  starting,
  limit
}) {
  const window = limiterWindow({
    startingHigh: newtonMetres(Math.max(0, starting.high)),
    neverExceedLow: limit.low,
    margin: HOUSE_CONSTANTS.limiterMargin.nominal,
    error: ratio(0),
    overshoot: newtonMetres(0)
  });
  return window.low <= window.high ? window : null;
}

// lib/duty/sound-line.ts
var PROCESS = {
  linePressure: [0, 1e8],
  differentialPressure: [0, 1e8],
  temperature: [-273, 1200],
  pipeLength: [0, 1e6],
  flowVelocity: [0, 30]
};
var STEM = {
  diameter: [3e-3, 0.5],
  threadFriction: [0, 0.6],
  collarFriction: [0, 0.6],
  collarMeanDiameter: [0, 1],
  thrust: [-1e7, 1e7],
  packingLoad: [0, 1e6],
  seatDiameter: [3e-3, 6],
  travel: [1e-3, 12],
  valveFactor: [0, 2]
};
var TORQUE = {
  turns: [0.05, 1e5],
  starting: [0, 1e6],
  running: [0, 1e6],
  max: [0.1, 1e6],
  minStrokeTime: [0, 1e6],
  maxInputSpeed: [0.01, 1e4],
  gearRatio: [0.05, 1e5],
  gearEfficiency: [0.02, 1],
  outputTorque: [0, 1e7]
};
var GRIP = {
  wheelDiameter: [0.03, 4],
  wheelDish: [0, 89],
  stemProtrusion: [0, 12],
  spindleSize: [5e-3, 0.3],
  spindleLength: [0, 60]
};
var PLACE = {
  depthToNut: [0, 60],
  misalignment: [0, 90],
  reach: [0, 200],
  clearRadius: [0, 200],
  headroom: [0, 200],
  vehicleDistance: [0, 1e5]
};
var SIZE = [3e-3, 6];
function soundLine(line) {
  const findings = [];
  const refuse2 = (field) => {
    findings.push({
      id: "value-set-aside",
      severity: "warning",
      about: [field],
      sentence: `The value given for ${spoken(field)} cannot be meant and was set aside; the tables are used instead. Check it.`,
      source: "house rule"
    });
  };
  const sound = {
    ...line,
    qty: whole(line.qty, 1),
    strokes: whole(line.strokes, 2),
    process: sift(line.process, PROCESS, refuse2),
    stem: soundThread(sift(line.stem, STEM, refuse2), refuse2),
    torque: sift(line.torque, TORQUE, refuse2),
    interface: soundNut(sift(line.interface, GRIP, refuse2), refuse2),
    place: sift(line.place, PLACE, refuse2)
  };
  if (line.size === void 0 || isSound(line.size, SIZE)) return { line: sound, findings };
  refuse2("size");
  const { size: _size, ...rest } = sound;
  return { line: rest, findings };
}
function isSound(value, [low, high]) {
  return value.low <= value.nominal && value.nominal <= value.high && value.low >= low && value.high <= high;
}
function isKnown(value) {
  return typeof value === "object" && value !== null && "nominal" in value;
}
function sift(part, limits, refuse2) {
  let sound = part;
  for (const [field, value] of Object.entries(part)) {
    const limit = limits[field];
    if (limit === void 0 || !isKnown(value) || isSound(value, limit)) continue;
    refuse2(field);
    sound = without(sound, field);
  }
  return sound;
}
function without(part, field) {
  const copy = { ...part };
  Reflect.deleteProperty(copy, field);
  return copy;
}
function soundThread(stem, refuse2) {
  let sound = stem;
  const size = stem.thread?.value;
  if (size !== void 0 && !(size.pitch_m > 3e-4 && size.majorDiameter_m > 2 * size.pitch_m && size.majorDiameter_m <= 0.5)) {
    refuse2("thread");
    sound = without(sound, "thread");
  } else if (size?.starts !== void 0 && !(isStarts(size.starts) && size.starts * size.pitch_m < size.majorDiameter_m)) {
    refuse2("thread");
    sound = without(sound, "thread");
  }
  if (stem.threadStarts !== void 0 && !isStarts(stem.threadStarts.value)) {
    refuse2("threadStarts");
    sound = without(sound, "threadStarts");
  }
  return sound;
}
function soundNut(grip, refuse2) {
  if (grip.nut === void 0 || isSound(grip.nut.acrossFlats, [4e-3, 0.2])) return grip;
  refuse2("nut");
  return without(grip, "nut");
}
function isStarts(starts) {
  return Number.isInteger(starts) && starts >= 1 && starts <= 8;
}
function whole(value, fallback) {
  return Number.isFinite(value) && value >= 1 ? Math.floor(value) : fallback;
}
function spoken(field) {
  return field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

// lib/engineering/surge.ts
var WATER_DENSITY = 1e3;
function criticalClosureTime({
  length,
  waveSpeed
}) {
  return seconds(2 * length / waveSpeed);
}
function fullSurge({
  waveSpeed,
  velocity
}) {
  return pascals(WATER_DENSITY * waveSpeed * velocity);
}
function closureSurge({
  length,
  waveSpeed,
  velocity,
  closure
}) {
  if (closure <= criticalClosureTime({ length, waveSpeed })) return fullSurge({ waveSpeed, velocity });
  return pascals(2 * WATER_DENSITY * length * velocity / closure);
}
function shortestClosure({
  length,
  waveSpeed,
  velocity,
  highestSurge
}) {
  if (fullSurge({ waveSpeed, velocity }) <= highestSurge) return seconds(0);
  return seconds(2 * WATER_DENSITY * length * velocity / highestSurge);
}

// lib/duty/speed-limits.ts
function speedLimits(given) {
  const { line, character } = given;
  const still = line.process.flowing?.value === "still";
  const usual = still ? character.geared ? HOUSE_CONSTANTS.gearboxInputSpeed : HOUSE_CONSTANTS.speedWithoutFlow : HOUSE_CONSTANTS.speedWithFlow;
  const maxInputSpeed = line.torque.maxInputSpeed ?? usual;
  if (still) return { maxInputSpeed, minStrokeTime: line.torque.minStrokeTime ?? null };
  const needed = strokeTimeForSurge(given);
  const minStrokeTime = line.torque.minStrokeTime ?? longer(needed, usualStroke(given));
  surgeFinding(given, { maxInputSpeed, minStrokeTime });
  return { maxInputSpeed, minStrokeTime };
}
function usualStroke({ loads, sheet }) {
  const { least, perMetre } = HOUSE_CONSTANTS.strokeWithFlow;
  const time = Math.max(least.nominal, loads.size.nominal * perMetre.nominal);
  const basis = worstBasis([loads.size.basis, perMetre.basis]);
  return lookUp(sheet, {
    id: "stroke-with-flow",
    name: "Shortest stroke while water may flow",
    value: exactly("s", time, { basis, source: perMetre.source })
  });
}
function longer(one2, other) {
  return one2 !== null && one2.nominal > other.nominal ? one2 : other;
}
function velocityOf({ line }) {
  return line.process.flowVelocity ?? HOUSE_CONSTANTS.flowVelocity;
}
function effectiveShare({ character }) {
  return character.family === "gate" || character.family === "penstock" ? HOUSE_CONSTANTS.effectiveShare.gate : HOUSE_CONSTANTS.effectiveShare.other;
}
function strokeTimeForSurge(given) {
  const length = given.line.process.pipeLength;
  if (length === void 0) return null;
  return calculate(given.sheet, {
    id: "min-stroke-time",
    name: "Shortest stroke for the surge allowed",
    formula: "t = 2\xB7\u03C1\xB7L\xB7\u0394v/(k\xB7p)/e",
    unit: "s",
    source: "Michaud\u2019s formula; effective share and surge allowed common practice, no source.",
    terms: {
      length: term("L", "pipe length", length),
      velocity: term("\u0394v", "velocity stopped", velocityOf(given)),
      wave: term("a", "wave speed", HOUSE_CONSTANTS.waveSpeed),
      rated: withEffect("lowers", term("p", "rated pressure", given.loads.rated)),
      allowed: withEffect("lowers", term("k", "surge allowed against the rating", HOUSE_CONSTANTS.surgeShare)),
      share: withEffect("lowers", term("e", "part of the stroke that closes", effectiveShare(given)))
    },
    evaluate: (at2) => shortestClosure({
      length: metres(at2("length")),
      waveSpeed: metresPerSecond(at2("wave")),
      velocity: metresPerSecond(at2("velocity")),
      highestSurge: pascals(at2("rated") * at2("allowed"))
    }) / at2("share")
  });
}
function surgeFinding(given, limits) {
  const { line, loads, sheet, turns: turns2 } = given;
  if (given.character.family === "keyed") return;
  const length = line.process.pipeLength;
  const velocity = velocityOf(given);
  const shared = {
    velocity: term("\u0394v", "velocity stopped", velocity),
    wave: term("a", "wave speed", HOUSE_CONSTANTS.waveSpeed)
  };
  const stroke = Math.max(turns2.nominal / limits.maxInputSpeed.nominal * 60, limits.minStrokeTime?.nominal ?? 0);
  const surge = length === void 0 ? calculate(sheet, {
    id: "surge",
    name: "Surge of a quick closure",
    formula: "\u0394p = \u03C1\xB7a\xB7\u0394v",
    unit: "Pa",
    source: "Joukowsky\u2019s equation; the pipe\u2019s length is not known, so the full surge is taken.",
    terms: shared,
    evaluate: (at2) => fullSurge({ waveSpeed: metresPerSecond(at2("wave")), velocity: metresPerSecond(at2("velocity")) })
  }) : calculate(sheet, {
    id: "surge",
    name: "Surge of the closure",
    formula: "\u0394p = \u03C1\xB7a\xB7\u0394v within 2L/a, else 2\xB7\u03C1\xB7L\xB7\u0394v/t",
    unit: "Pa",
    source: "Joukowsky\u2019s equation; Michaud\u2019s formula for slow closures.",
    terms: {
      ...shared,
      length: term("L", "pipe length", length),
      share: withEffect("lowers", term("e", "part of the stroke that closes", effectiveShare(given)))
    },
    evaluate: (at2) => closureSurge({
      length: metres(at2("length")),
      waveSpeed: metresPerSecond(at2("wave")),
      velocity: metresPerSecond(at2("velocity")),
      closure: seconds(stroke * at2("share"))
    })
  });
  const known2 = line.process.flowing?.value === "flowing";
  const heavy = surge.nominal > loads.rated.nominal * HOUSE_CONSTANTS.surgeShare.nominal;
  const bars2 = (value) => (value / 1e5).toFixed(value < 1e6 ? 1 : 0);
  note(sheet, {
    id: "surge-estimate",
    severity: known2 && heavy ? "warning" : "note",
    about: ["flowing", "min_stroke_time"],
    sentence: `${known2 ? "Water is flowing" : "Whether water flows is not given, so it is taken to flow"}: closing ${length === void 0 ? "quickly may raise the pressure by" : "at the speed allowed may raise the pressure by about"} ${bars2(surge.low)} to ${bars2(surge.high)} bar. Close slowly, the last part of the stroke slowest; ${limits.maxInputSpeed.nominal} turns a minute at most.`,
    source: "Joukowsky\u2019s equation; an estimate that warns, not a surge study."
  });
}

// lib/duty/years-idle.ts
var FIRST_CALENDAR_YEAR = 1800;
var MOST_YEARS = 300;
function yearsIdle({ line, site }) {
  return yearsAgo(line.state.lastOperated, site);
}
function yearsAgo(given, site) {
  if (given === void 0 || !Number.isFinite(given.value) || given.value < 0) return null;
  if (given.value < FIRST_CALENDAR_YEAR) return given.value <= MOST_YEARS ? given.value : null;
  const thisYear = Number(site.startsOn.slice(0, 4));
  return Number.isFinite(thisYear) ? Math.max(0, thisYear - given.value) : null;
}

// lib/duty/valve-character.ts
var FAMILIES = {
  gate: "gate",
  "wedge gate": "gate",
  "flexible wedge gate": "gate",
  "double disc gate": "gate",
  "parallel slide gate": "gate",
  "knife gate": "gate",
  globe: "globe",
  penstock: "penstock",
  diaphragm: "squeeze",
  pinch: "squeeze",
  butterfly: "quarter turn",
  ball: "quarter turn",
  plug: "quarter turn",
  hydrant: "keyed",
  "stop tap": "keyed",
  unknown: "gate"
};
function characterise({ line, site }) {
  const type2 = line.valveType?.value ?? "unknown";
  const family = FAMILIES[type2];
  const setting = settingOf({ line, site, type: type2 });
  const buried = isBuried(line);
  const geared = line.torque.gearbox !== void 0 || isGearDrive(line) || family === "quarter turn" && !isBareQuarterTurn(line);
  const drivenBy2 = line.interface.drivenBy ?? guessDrive({ line, setting, buried, geared, family });
  const stemKind = line.stem.kind ?? guessStem({ line, setting, family, type: type2, drivenBy: drivenBy2.value });
  return {
    type: type2,
    family,
    setting,
    geared,
    buried,
    drivenBy: drivenBy2,
    stemKind,
    age: yearsAgo(line.state.age, site),
    idle: yearsIdle({ line, site })
  };
}
function isGearDrive(line) {
  const drive = line.interface.drivenBy?.value;
  return drive === "gearbox wheel" || drive === "gearbox nut" || line.torque.gearRatio !== void 0 && line.torque.gearRatio.nominal > 1;
}
function isBareQuarterTurn(line) {
  const drive = line.interface.drivenBy?.value;
  if (drive === "square" || drive === "key cap") return true;
  const turns2 = line.torque.turns?.nominal;
  return turns2 !== void 0 && turns2 <= 1;
}
function settingOf({
  line,
  site,
  type: type2
}) {
  const rating = line.rating?.value ?? "";
  const service = line.process.service?.value;
  if (type2 === "hydrant" || type2 === "stop tap" || type2 === "penstock") return "waterworks";
  if (service === "potable" || service === "sewage" || isBuried(line)) return "waterworks";
  if (service === "oxygen" || service === "toxic" || line.place.zone !== void 0 || site.zone !== void 0)
    return "plant";
  if (/class|#|\bcl\b/i.test(rating) && !/\b(125|250)\b/.test(rating)) return "plant";
  if (/\d\s*K\b|\bK\s*\d/i.test(rating)) return "plant";
  const medium = line.process.medium?.value ?? "";
  if (/steam|oil|gas|fuel|naphtha|crude|acid|caustic|ammonia|hydrogen|condensate|cargo|ballast/i.test(medium))
    return "plant";
  if ((line.process.temperature?.nominal ?? 0) > 70) return "plant";
  const kind = line.stem.kind?.value;
  return kind === "rising through the wheel" && !/water/i.test(medium) && !/PN/i.test(rating) ? "plant" : "waterworks";
}
function isBuried(line) {
  if (line.place.depthToNut !== void 0 || line.place.surfaceBox !== void 0) return true;
  const text = `${line.place.location ?? ""} ${line.notes ?? ""} ${line.place.surface?.value ?? ""}`;
  return /buried|not visible|invisible|covered|under(ground| the road)|surface box|street box|valve box/i.test(text);
}
function guessDrive({
  line,
  setting,
  buried,
  geared,
  family
}) {
  const grip = line.interface;
  const assumed = (drive, why) => fact(drive, { basis: "assumed", source: `Taken as driven by a ${drive}: ${why}.` });
  if (grip.wheelDiameter !== void 0 || grip.wheelSpokes !== void 0)
    return assumed(geared ? "gearbox wheel" : "handwheel", "the list gives a wheel");
  if (grip.nut !== void 0 || grip.nutShape !== void 0)
    return assumed(geared ? "gearbox nut" : "nut", "the list gives a nut");
  if (grip.spindleSize !== void 0 || grip.spindleLength !== void 0)
    return assumed("extension spindle", "the list gives a spindle");
  if (geared)
    return buried ? assumed("gearbox nut", "the valve is buried and geared") : assumed("gearbox wheel", "geared valves above ground have a wheel");
  if (family === "keyed") return assumed("square", "hydrants and stop taps are turned on a key");
  if (buried) return assumed("nut", "the valve is buried or not visible");
  if (family === "penstock") return assumed("handwheel", "penstocks above water have a wheel or pillar");
  if (setting === "waterworks" && family === "gate")
    return assumed("nut", "waterworks valves are usually turned on a key");
  return assumed("handwheel", "valves of this kind usually have a handwheel");
}
function guessStem({
  line,
  setting,
  family,
  type: type2,
  drivenBy: drivenBy2
}) {
  const assumed = (kind, why) => fact(kind, { basis: "assumed", source: `Taken as ${kind}: ${why}.` });
  if (line.interface.stemProtrusion !== void 0)
    return assumed("rising through the wheel", "the list gives a protrusion");
  const onNut2 = drivenBy2 === "nut" || drivenBy2 === "key cap" || drivenBy2 === "square" || drivenBy2 === "extension spindle";
  if (onNut2) return assumed("non-rising", "valves on a nut or key have a non-rising stem");
  if (family === "globe")
    return assumed("rising with the wheel", "most globe valves turn and lift their stem together");
  if (family === "gate" && setting === "waterworks" && type2 !== "knife gate")
    return assumed("non-rising", "waterworks gates usually have a non-rising stem");
  return assumed(
    "rising through the wheel",
    "gates, penstocks and clamping valves in plants usually lift their stem through the wheel"
  );
}

// lib/engineering/flange-limits.ts
var PART_TURN_FLANGES = {
  F03: 32,
  F04: 63,
  F05: 125,
  F07: 250,
  F10: 500,
  F12: 1e3,
  F14: 2e3,
  F16: 4e3,
  F25: 8e3,
  F30: 16e3,
  F35: 32e3,
  F40: 63e3,
  F48: 125e3,
  F60: 25e4
};
var MULTI_TURN_FLANGES = {
  F07: { torque_nm: 40, thrust_n: 2e4 },
  F10: { torque_nm: 100, thrust_n: 4e4 },
  F14: { torque_nm: 400, thrust_n: 1e5 },
  F16: { torque_nm: 700, thrust_n: 15e4 },
  F25: { torque_nm: 1200, thrust_n: 2e5 },
  F30: { torque_nm: 2500, thrust_n: 325e3 },
  F35: { torque_nm: 5e3, thrust_n: 7e5 },
  F40: { torque_nm: 1e4, thrust_n: 11e5 }
};
function partTurnFlangeTorque(flange) {
  const torque2 = PART_TURN_FLANGES[flangeName(flange)];
  return torque2 === void 0 ? null : newtonMetres(torque2);
}
function multiTurnFlangeTorque(flange) {
  const row = MULTI_TURN_FLANGES[flangeName(flange)];
  return row === void 0 ? null : newtonMetres(row.torque_nm);
}
function multiTurnFlangeThrust(flange) {
  const row = MULTI_TURN_FLANGES[flangeName(flange)];
  return row === void 0 ? null : newtons(row.thrust_n);
}
function flangeName(text) {
  const found = /F\s*(\d{1,2})\b/i.exec(text);
  return found?.[1] === void 0 ? text : `F${found[1].padStart(2, "0")}`;
}

// lib/duty/gear-bounds.ts
function shaftBounds({ line, sheet }) {
  const flange = line.torque.flange;
  const torque2 = flange === void 0 ? null : partTurnFlangeTorque(flange.value);
  if (flange === void 0 || torque2 === null) return [];
  return [
    both(
      "flange",
      lookUp(sheet, {
        id: "bound-flange",
        name: "Torque that the flange may pass",
        value: exactly("N\xB7m", torque2, {
          basis: "standard",
          source: `ISO 5211, flange ${flange.value}, from memory: a bound on what may pass, not on what is needed.`
        })
      })
    )
  ];
}
function throughGear({
  bounds,
  gear,
  sheet
}) {
  const efficiency = exactly("1", gear.efficiency.high, {
    basis: gear.efficiency.basis,
    source: `The highest efficiency, where the input makes most output: ${gear.efficiency.source}`
  });
  return bounds.map((bound) => ({
    ...bound,
    torque: calculate(sheet, {
      id: `bound-${bound.kind.replaceAll(" ", "-")}-input`,
      name: `Bound of ${bound.kind} at the gearbox input`,
      formula: "Tin = T/(i\xB7\u03B7)",
      unit: "N\xB7m",
      source: "Wentzell, Machine Design, ch. 13.",
      terms: {
        bound: term("T", `bound of ${bound.kind}`, bound.torque),
        ratio: withEffect("lowers", term("i", "ratio", gear.ratio)),
        efficiency: withEffect("lowers", term("\u03B7", "efficiency, highest", efficiency))
      },
      evaluate: (at2) => gearInputTorque({
        outputTorque: newtonMetres(at2("bound")),
        ratio: ratio(at2("ratio")),
        efficiency: ratio(at2("efficiency"))
      })
    })
  }));
}
function gearboxBound({ loads, character, sheet, wheel }) {
  if (wheel !== null) {
    const strength = spreadOf("1", [0.9, 1, 1.5], {
      basis: "rule of thumb",
      source: "Gearboxes that are weaker or stronger than AWWA C504 asks; common practice, no source."
    });
    return both(
      "gearbox input",
      calculate(sheet, {
        id: "bound-gearbox-input",
        name: "What gearbox input and end stops stand",
        formula: "T = F\xB7D/2\xB7k\xB7a",
        unit: "N\xB7m",
        source: "AWWA C504: stops stand 200 lbf (890 N) in total at the rim, from memory.",
        terms: {
          pull: term(
            "F",
            "total pull at the rim",
            exactly("N", OVERLOAD_PULL, { basis: "standard", source: "AWWA C504, from memory." })
          ),
          wheel: term("D", "wheel diameter", wheel),
          strength: term("k", "against AWWA C504", strength),
          left: term("a", "strength that age leaves", strengthLeft(character))
        },
        evaluate: (at2) => rimTorque({ force: newtons(at2("pull")), wheelDiameter: metres(at2("wheel")) }) * at2("strength") * at2("left")
      })
    );
  }
  const small = loads.size.nominal < 0.3;
  const rule = lookUp(sheet, {
    id: "gearbox-nut-rule",
    name: "What gearbox input and end stops stand on a nut",
    value: spreadOf("N\xB7m", small ? [120, 203, 407] : [203, 300, 407], {
      basis: "rule of thumb",
      source: "AWWA C504, from memory: rated torque at 150 lbf\xB7ft (203 N\xB7m) on the nut, stops stand 300 lbf\xB7ft (407 N\xB7m); smaller gearboxes less."
    })
  });
  return both(
    "gearbox input",
    weakened({ sheet, character }, "bound-gearbox-input", "Gearbox input and end stops", rule)
  );
}

// lib/engineering/keyed-valves.ts
var HYDRANTS = [
  {
    upToSize_mm: 85,
    turns: [6, 12, 20],
    running_nm: [10, 22, 45],
    neverExceed_nm: [120, 180, 271],
    source: "Size rule for hydrants up to DN 80; common practice, no source."
  },
  {
    upToSize_mm: 400,
    turns: [8, 15, 25],
    running_nm: [14, 30, 60],
    neverExceed_nm: [150, 210, 271],
    source: "Size rule for hydrants from DN 100; common practice, no source."
  }
];
var STOP_TAPS = [
  {
    upToSize_mm: 27,
    turns: [2.5, 3.5, 13],
    running_nm: [1.5, 4, 8],
    neverExceed_nm: [22, 30, 45],
    source: "Size rule for stop taps up to DN 25; turns from a water company\u2019s stop-valve page, torque common practice, no source."
  },
  {
    upToSize_mm: 400,
    turns: [3, 6, 13],
    running_nm: [3, 8, 16],
    neverExceed_nm: [40, 55, 80],
    source: "Size rule for stop taps above DN 25; common practice, no source."
  }
];

// lib/duty/keyed-duty.ts
function rowsFor({
  character,
  loads
}) {
  const rows = character.type === "stop tap" ? STOP_TAPS : HYDRANTS;
  const last = rows.at(-1);
  if (last === void 0) return null;
  const at2 = (size) => rows.find(({ upToSize_mm }) => size * 1e3 <= upToSize_mm) ?? last;
  return [at2(loads.size.low), at2(loads.size.nominal), at2(loads.size.high)];
}
function over(given, pick) {
  const rows = rowsFor(given);
  if (rows === null) return { low: 0, nominal: 0, high: 0, source: "No size rule." };
  const [least, likely, most] = rows;
  return {
    low: Math.min(pick(least)[0], pick(most)[0]),
    nominal: pick(likely)[1],
    high: Math.max(pick(least)[2], pick(most)[2]),
    source: likely.source
  };
}
function keyedTorque(given, direction) {
  const { sheet, factors, character } = given;
  const { source: source2, ...range } = over(given, (row) => row.running_nm);
  const running = lookUp(sheet, {
    id: `running-torque-${direction}`,
    name: `Running torque by size rule, ${direction}`,
    value: settle("N\xB7m", range, { basis: character.type === "unknown" ? "assumed" : "rule of thumb", source: source2 })
  });
  const starting = calculate(sheet, {
    id: `starting-torque-${direction}`,
    name: `Starting torque, ${direction}`,
    formula: "T0 = T\xB7k",
    unit: "N\xB7m",
    source: factors[direction].source,
    terms: { running: term("T", "running torque", running), factor: term("k", "starting factor", factors[direction]) },
    evaluate: (at2) => at2("running") * at2("factor")
  });
  return { starting, running, thrust: null };
}
function keyedTurns(given) {
  const { source: source2, ...range } = over(given, (row) => row.turns);
  return lookUp(given.sheet, {
    id: "turns-by-size-rule",
    name: "Turns by size rule",
    value: settle("turn", range, { basis: "rule of thumb", source: source2 })
  });
}
function keyedBound(given) {
  const { source: source2, ...range } = over(given, (row) => row.neverExceed_nm);
  const rule = lookUp(given.sheet, {
    id: "bound-by-size-rule",
    name: "Ceiling by size rule",
    value: settle("N\xB7m", range, { basis: "rule of thumb", source: source2 })
  });
  const left = strengthLeft(given.character);
  const torque2 = left.low === 1 ? rule : calculate(given.sheet, {
    id: "bound-size-rule-old",
    name: "Ceiling by size rule, weakened by age",
    formula: "T = T0\xB7k",
    unit: "N\xB7m",
    source: left.source,
    terms: {
      bound: term("T0", "ceiling of a sound one", rule),
      left: term("k", "strength that age leaves", left)
    },
    evaluate: (at2) => at2("bound") * at2("left")
  });
  return { kind: "size rule", directions: ["opening", "closing"], torque: torque2 };
}
function bareQuarterBound({
  atSeat,
  sheet
}) {
  const margin = spreadOf("1", [1.5, 2, 3], {
    basis: "rule of thumb",
    source: "Stem and square of a quarter-turn valve against its seat torque; common practice, no source."
  });
  return {
    kind: "stem square",
    directions: ["opening", "closing"],
    torque: calculate(sheet, {
      id: "bound-stem-square",
      name: "What the stem\u2019s square stands",
      formula: "T = T0\xB7k",
      unit: "N\xB7m",
      source: margin.source,
      terms: { seat: term("T0", "torque at the seat", atSeat), margin: term("k", "against the seat torque", margin) },
      evaluate: (at2) => at2("seat") * at2("margin")
    })
  };
}

// lib/engineering/power-screw.ts
function threadTorque({ load, meanDiameter, lead, flankHalfAngle: flankHalfAngle2, friction }) {
  const slope = lead / (Math.PI * meanDiameter);
  const grip = friction / Math.cos(flankHalfAngle2 * Math.PI / 180);
  const lever = meanDiameter / 2;
  if (load >= 0) return newtonMetres(load * lever * (slope + grip) / (1 - slope * grip));
  return newtonMetres(-load * lever * (grip - slope) / (1 + slope * grip));
}
function collarTorque({
  load,
  collarFriction: collarFriction2,
  collarMeanDiameter
}) {
  return newtonMetres(Math.abs(load) * collarFriction2 * collarMeanDiameter / 2);
}
function stemTorque({
  load,
  meanDiameter,
  lead,
  flankHalfAngle: flankHalfAngle2,
  friction,
  collarFriction: collarFriction2,
  collarMeanDiameter
}) {
  const inThread = threadTorque({ load, meanDiameter, lead, flankHalfAngle: flankHalfAngle2, friction });
  return newtonMetres(inThread + collarTorque({ load, collarFriction: collarFriction2, collarMeanDiameter }));
}
function selfLockingFriction({ lead, meanDiameter, flankHalfAngle: flankHalfAngle2 }) {
  return ratio(lead * Math.cos(flankHalfAngle2 * Math.PI / 180) / (Math.PI * meanDiameter));
}

// lib/engineering/stem-thrust.ts
function roundArea(diameter) {
  return squareMetres(Math.PI * diameter ** 2 / 4);
}
function stemEndLoad({
  linePressure,
  stemDiameter: stemDiameter2
}) {
  return newtons(linePressure * roundArea(stemDiameter2));
}
function gateThrust({
  movement,
  seatLoad: seatLoad2,
  valveFactor,
  stemEnd,
  packing,
  weight
}) {
  const upward = movement === "opening" ? weight - stemEnd : stemEnd - weight;
  return newtons(valveFactor * seatLoad2 + packing + upward);
}
function globeThrust({
  movement,
  flow,
  seatLoad: seatLoad2,
  valveFactor,
  stemEnd,
  packing,
  seating
}) {
  const against = movement === "closing" === (flow === "under") ? 1 : -1;
  const stem = movement === "closing" ? stemEnd + seating : -stemEnd;
  return newtons(against * valveFactor * seatLoad2 + packing + stem);
}
function penstockThrust({
  movement,
  weight,
  friction,
  waterLoad
}) {
  return newtons(friction * waterLoad + (movement === "opening" ? weight : -weight));
}
function squeezeLoad({
  linePressure,
  squeeze,
  area
}) {
  return newtons((linePressure + squeeze) * area);
}
function packingFriction({
  stemDiameter: stemDiameter2,
  loadPerDiameter
}) {
  return newtons(stemDiameter2 * loadPerDiameter);
}
function packingTorque({
  packing,
  stemDiameter: stemDiameter2
}) {
  return newtonMetres(packing * stemDiameter2 / 2);
}
function seatingLoad({
  seatDiameter,
  lineLoad
}) {
  return newtons(lineLoad * Math.PI * seatDiameter);
}

// lib/duty/screw-duty.ts
function screwTorque(given, direction) {
  const { thrusts, sheet, factors } = given;
  const thrust = thrusts[direction];
  const running = runningTorque(given, direction, thrust);
  const starting = calculate(sheet, {
    id: `starting-torque-${direction}`,
    name: `Starting torque at the stem, ${direction}`,
    formula: "T0 = T\xB7k",
    unit: "N\xB7m",
    source: factors[direction].source,
    terms: {
      running: term("T", "running torque", running),
      factor: withEffect(running.low < 0 ? "either" : "raises", term("k", "starting factor", factors[direction]))
    },
    evaluate: (at2) => at2("running") * at2("factor")
  });
  return { starting, running, thrust };
}
function runningTorque(given, direction, thrust) {
  const { stem, thrusts, sheet, character } = given;
  const parts = [
    threadPart(given, direction, thrust),
    collarPart(given, direction, thrust),
    swivelPart(given, direction, thrust)
  ].filter((part) => part !== null);
  if (character.stemKind.value !== "rising through the wheel") {
    parts.push(
      calculate(sheet, {
        id: `packing-torque-${direction}`,
        name: `Torque of the packing, ${direction}`,
        formula: "T = Fp\xB7d/2",
        unit: "N\xB7m",
        source: "Statics: the stem turns in its packing.",
        terms: {
          packing: term("Fp", "packing load", thrusts.packing),
          diameter: term("d", "stem diameter", stem.diameter)
        },
        evaluate: (at2) => packingTorque({ packing: newtons(at2("packing")), stemDiameter: metres(at2("diameter")) })
      })
    );
  }
  const terms = Object.fromEntries(
    parts.map((part, index) => [`part${index}`, term(`T${index + 1}`, part.source.split(":")[0] ?? "part", part)])
  );
  return calculate(sheet, {
    id: `running-torque-${direction}`,
    name: `Running torque at the stem, ${direction}`,
    formula: parts.map((_, index) => `T${index + 1}`).join(" + "),
    unit: "N\xB7m",
    source: "Sum of thread, collar or swivel, and packing.",
    terms,
    evaluate: (at2) => parts.reduce((sum, _part, index) => sum + at2(`part${index}`), 0)
  });
}
function threadPart({ stem, sheet }, direction, thrust) {
  return calculate(sheet, {
    id: `thread-torque-${direction}`,
    name: `Torque in the thread, ${direction}`,
    unit: "N\xB7m",
    formula: "T = F\xB7dm/2\xB7tan(\u03BB + \u03C6); helping load: |F|\xB7dm/2\xB7tan(\u03C6 \u2212 \u03BB)",
    source: "Shigley\u2019s Mechanical Engineering Design, eq. 8-1, 8-2 and 8-5.",
    terms: {
      load: withEffect("bends", term("F", "stem thrust", thrust)),
      diameter: term("dm", "mean diameter", stem.meanDiameter),
      lead: withEffect(thrust.low >= 0 ? "raises" : "either", term("l", "lead", stem.lead)),
      angle: term("\u03B1", "half flank angle", stem.flankHalfAngle),
      friction: term("f", "thread friction", stem.friction)
    },
    evaluate: (at2) => threadTorque({
      load: newtons(at2("load")),
      meanDiameter: metres(at2("diameter")),
      lead: metres(at2("lead")),
      flankHalfAngle: degrees(at2("angle")),
      friction: ratio(at2("friction"))
    })
  });
}
function collarPart({ stem, thrusts, sheet }, direction, thrust) {
  if (stem.collar === null) return null;
  const sign = direction === "opening" ? -1 : 1;
  const carriesMore = thrusts.collarOnly.high > 0;
  const load = carriesMore ? calculate(sheet, {
    id: `collar-load-${direction}`,
    name: `Load on the collar, ${direction}`,
    unit: "N",
    formula: `Fc = F ${sign < 0 ? "\u2212" : "+"} Fs`,
    source: "Statics: the collar of a non-rising stem carries the pressure on the stem\u2019s end too.",
    terms: {
      load: term("F", "stem thrust", thrust),
      end: withEffect(sign < 0 ? "lowers" : "raises", term("Fs", "stem-end load", thrusts.collarOnly))
    },
    evaluate: (at2) => at2("load") + sign * at2("end")
  }) : thrust;
  return calculate(sheet, {
    id: `collar-torque-${direction}`,
    name: `Torque in the collar, ${direction}`,
    unit: "N\xB7m",
    formula: "T = |Fc|\xB7fc\xB7dc/2",
    source: "Shigley\u2019s Mechanical Engineering Design, eq. 8-6.",
    terms: {
      load: withEffect("bends", term("Fc", "load on the collar", load)),
      friction: term("fc", "collar friction", stem.collar.friction),
      diameter: term("dc", "mean diameter of the collar", stem.collar.meanDiameter)
    },
    evaluate: (at2) => collarTorque({
      load: newtons(at2("load")),
      collarFriction: ratio(at2("friction")),
      collarMeanDiameter: metres(at2("diameter"))
    })
  });
}
function swivelPart({ stem, character, sheet }, direction, thrust) {
  if (character.stemKind.value !== "rising with the wheel" || direction !== "closing") return null;
  const { swivelFriction, swivelShare } = HOUSE_CONSTANTS;
  return calculate(sheet, {
    id: "swivel-torque-closing",
    name: "Torque in the disc swivel when seating",
    formula: "T = |F|\xB7fs\xB7(k\xB7d)/2",
    unit: "N\xB7m",
    source: "Statics of a pivot; share of the stem common practice, no source.",
    terms: {
      load: withEffect("bends", term("F", "stem thrust", thrust)),
      friction: term("fs", "pivot friction", swivelFriction),
      share: term("k", "pivot against stem", swivelShare),
      diameter: term("d", "stem diameter", stem.diameter)
    },
    evaluate: (at2) => collarTorque({
      load: newtons(at2("load")),
      collarFriction: ratio(at2("friction")),
      collarMeanDiameter: metres(at2("share") * at2("diameter"))
    })
  });
}
function screwTurns({ line, character, loads, stem, sheet }) {
  const fromGeometry = calculate(sheet, {
    id: "turns-of-the-stem",
    name: "Turns of a stroke at the stem",
    formula: "N = s/l + N0",
    unit: "turn",
    source: "Geometry.",
    terms: {
      travel: term("s", "travel", stem.travel),
      lead: withEffect("lowers", term("l", "lead", stem.lead)),
      lost: term("N0", "lost motion", HOUSE_CONSTANTS.lostMotion)
    },
    evaluate: (at2) => turnsFromTravel({ travel: metres(at2("travel")), lead: metres(at2("lead")), lostMotion: turns(at2("lost")) })
  });
  const ruled = character.setting === "waterworks" && character.family === "gate" && line.stem.thread === void 0 && line.stem.threadStarts === void 0;
  if (!ruled || line.torque.turns !== void 0) return fromGeometry;
  const extra = spreadOf("turn", [1, 2.5, 3], {
    basis: "rule of thumb",
    source: "Two to three turns beyond three for each inch."
  });
  const byRule = calculate(sheet, {
    id: "turns-by-rule",
    name: "Turns by the waterworks rule",
    formula: "N = 3\xB7D/25.4 mm + k",
    unit: "turn",
    source: "Waterworks rule of thumb; Kansas Rural Water Association, The Kansas Lifeline, November 2011: 27 turns at 8 in.",
    terms: { size: term("D", "nominal size", loads.size), extra: term("k", "turns beyond", extra) },
    evaluate: (at2) => waterworksTurns({ size: metres(at2("size")), extra: turns(at2("extra")) })
  });
  const basis = worstBasis([byRule.basis, "rule of thumb"]);
  return settle(
    "turn",
    {
      low: Math.min(byRule.low, fromGeometry.low),
      nominal: (byRule.nominal + fromGeometry.nominal) / 2,
      high: Math.max(byRule.high, fromGeometry.high)
    },
    {
      basis,
      source: "Turns by the waterworks rule and by travel and usual threads, both covered: practice differs between countries."
    }
  );
}
function dutyThread(stem) {
  const least = (lead, meanDiameter) => selfLockingFriction({
    lead: metres(lead),
    meanDiameter: metres(meanDiameter),
    flankHalfAngle: degrees(stem.flankHalfAngle.nominal)
  });
  const holds2 = stem.friction.low >= least(stem.lead.high, stem.meanDiameter.low);
  const slips = stem.friction.high < least(stem.lead.low, stem.meanDiameter.high);
  return { meanDiameter: stem.meanDiameter, lead: stem.lead, selfLocking: holds2 ? "yes" : slips ? "no" : "depends" };
}

// lib/duty/starting-factor.ts
var BY_CONDITION = {
  free: [1.05, 1.2, 1.4],
  unknown: [1.15, 1.45, 1.8],
  stiff: [1.5, 2.1, 3],
  seized: [2, 3, 5]
};
function startingFactors({
  line,
  character,
  sheet
}) {
  const condition = line.state.condition?.value ?? "unknown";
  let [low, nominal, high] = BY_CONDITION[condition];
  const reasons = [condition === "unknown" ? "condition not given" : `said to be ${condition}`];
  const { idle, age } = character;
  if (idle !== null && idle >= 15) {
    [nominal, high] = [nominal + 0.4, high + 0.6];
    reasons.push(`not moved for ${idle} years`);
  } else if (idle !== null && idle >= 5) {
    [nominal, high] = [nominal + 0.2, high + 0.3];
    reasons.push(`not moved for ${idle} years`);
  } else if (idle !== null && idle <= 1 && condition === "unknown") {
    [low, nominal, high] = [1.05, 1.3, 1.55];
    reasons.push("moved within a year");
  }
  if (age !== null && age >= HOUSE_CONSTANTS.yearsUntilOld.nominal) {
    [nominal, high] = [nominal + 0.1, high + 0.3];
    reasons.push(`${age} years old`);
  }
  const basis = condition === "unknown" && idle === null ? "assumed" : "rule of thumb";
  const source2 = `Starting against running, ${reasons.join(", ")}; common practice, no source.`;
  const opening = settle("1", { low, nominal, high }, { basis, source: source2 });
  const half = (factor) => 1 + (factor - 1) / 2;
  const closing = settle(
    "1",
    { low: half(low), nominal: half(nominal), high: half(high) },
    { basis, source: `Half of the opening surplus, as nothing is wedged at the open end: ${source2}` }
  );
  return {
    opening: lookUp(sheet, { id: "starting-factor-opening", name: "Starting factor, opening", value: opening }),
    closing: lookUp(sheet, { id: "starting-factor-closing", name: "Starting factor, closing", value: closing })
  };
}

// lib/duty/stem-bounds.ts
function stemBounds(given) {
  const iron = given.character.family === "gate" && given.character.setting === "waterworks" && given.character.type !== "knife gate";
  return [
    ...iron ? [ironGateBound(given)] : [],
    ...given.stem.grounded || !iron ? [torsionBound(given)] : [],
    ...bucklingBound(given),
    ...multiTurnFlange(given)
  ];
}
function ironGateBound({ loads, character, sheet }) {
  const at2 = (size) => size < 0.07 ? [100, 140, 200] : size < 0.115 ? [200, 235, 271] : size < 0.18 ? [270, 330, 407] : size < 0.32 ? [320, 380, 450] : size < 0.5 ? [400, 500, 700] : [450, 650, 1e3];
  const [least, likely, most] = [at2(loads.size.low)[0], at2(loads.size.nominal)[1], at2(loads.size.high)[2]];
  const rule = lookUp(sheet, {
    id: "iron-gate-rule",
    name: "Torque that iron gate valves are built for",
    value: settle(
      "N\xB7m",
      { low: least, nominal: likely, high: most },
      {
        basis: loads.size.basis === "assumed" ? "assumed" : "rule of thumb",
        source: "AWWA C509 and C515, from memory: 200 lbf\xB7ft (271 N\xB7m) at 3 to 4 in, 300 lbf\xB7ft (407 N\xB7m) from 6 in; metric valves about 2 N\xB7m for each mm of size at the low end, common practice."
      }
    )
  });
  return both("standard", weakened({ sheet, character }, "bound-iron-gate", "Iron gate valves by size", rule));
}
function yieldStress({ line, character }) {
  const material = line.stem.material?.value ?? "";
  if (/bronze|brass|copper|gunmetal|alumin/i.test(material)) return HOUSE_CONSTANTS.yieldOfBronzeStem;
  if (material === "" && character.setting === "plant")
    return {
      ...HOUSE_CONSTANTS.yieldOfSteelStem,
      basis: "assumed",
      source: "The stem\u2019s material is not given: steel or 13 % chromium is taken, as usual in plants."
    };
  return /steel|13\s*cr|410|416|420|431|304|316|stainless|chrom|duplex|monel|17-4/i.test(material) ? HOUSE_CONSTANTS.yieldOfSteelStem : HOUSE_CONSTANTS.yieldOfUnknownStem;
}
function torsionBound(given) {
  const { stem, character, sheet } = given;
  return both(
    "stem torsion",
    calculate(sheet, {
      id: "bound-stem-torsion",
      name: "Stem torsion at the thread root",
      formula: "T = \u03C0\xB7d3\xB3/16\xB70.577\xB7Re/S\xB7k",
      unit: "N\xB7m",
      source: "Gere, Mechanics of Materials, section 3.3; Shigley, distortion-energy theory.",
      terms: {
        root: term("d3", "root diameter", stem.rootDiameter),
        yield: term("Re", "yield stress of the stem", yieldStress(given)),
        left: term("k", "strength that age leaves", strengthLeft(character))
      },
      evaluate: (at2) => solidShaftTorque({ stress: shear(at2("yield")), diameter: metres(at2("root")) }) * at2("left")
    })
  );
}
function bucklingBound(given) {
  const { line, character, stem, sheet } = given;
  if (character.stemKind.value === "non-rising" && character.family !== "penstock") return [];
  const length = character.family === "penstock" ? penstockLength(given) : settle(
    "m",
    {
      low: stem.travel.low,
      nominal: stem.travel.nominal + 2 * stem.diameter.nominal,
      high: stem.travel.high + 3 * stem.diameter.high
    },
    {
      basis: stem.travel.basis === "assumed" ? "assumed" : "rule of thumb",
      source: "Free length of the stem: its travel and the neck of its bonnet; common practice, no source."
    }
  );
  const bronze = /bronze|brass|gunmetal/i.test(line.stem.material?.value ?? "");
  const load = calculate(sheet, {
    id: "buckling-load",
    name: "Compression that the stem bears",
    formula: "F = \u03C0\xB2\xB7E\xB7A/(S\xB7(K\xB7L/(d/4))\xB2), Johnson when stout",
    unit: "N",
    source: "Shigley\u2019s Mechanical Engineering Design, sections 4-12 and 4-13.",
    terms: {
      root: term("d", "root diameter", stem.rootDiameter),
      length: withEffect("lowers", term("L", "free length", length)),
      ends: withEffect("lowers", term("K", "end factor", HOUSE_CONSTANTS.bucklingEnds)),
      yield: term("Re", "yield stress of the stem", yieldStress(given))
    },
    evaluate: (at2) => bucklingLoad({
      diameter: metres(at2("root")),
      length: metres(at2("length")),
      endFactor: ratio(at2("ends")),
      modulus: bronze ? BRONZE_MODULUS : STEEL_MODULUS,
      yieldStress: pascals(at2("yield")),
      safetyFactor: HOUSE_CONSTANTS.bucklingFactor.nominal
    })
  });
  return [{ kind: "stem buckling", directions: ["closing"], torque: thrustAsTorque(given, "stem-buckling", load) }];
}
function penstockLength({ line, sheet, stem }) {
  const said4 = line.interface.spindleLength ?? line.place.depthToNut;
  if (said4 !== void 0) return said4;
  const at2 = (slenderness) => slenderness * stem.rootDiameter.nominal / 4;
  return lookUp(sheet, {
    id: "stem-free-length",
    name: "Free length of the stem",
    value: settle(
      "m",
      { low: at2(100), nominal: at2(140), high: at2(200) },
      {
        basis: "assumed",
        source: "Distance between the guides of the stem is not given: a slenderness of 100 to 200 is taken, 200 being the usual limit (AWWA C560, from memory)."
      }
    )
  });
}
function thrustAsTorque({ stem, sheet }, id, load) {
  const least = exactly("1", stem.friction.low, {
    basis: stem.friction.basis,
    source: `The lowest friction, where torque turns into most thrust: ${stem.friction.source}`
  });
  const collar = stem.collar === null ? null : {
    friction: exactly("1", stem.collar.friction.low, stem.collar.friction),
    diameter: exactly("m", stem.collar.meanDiameter.low, stem.collar.meanDiameter)
  };
  const none = { basis: "computed", source: "No collar turns under thrust." };
  return calculate(sheet, {
    id: `bound-${id}`,
    name: `Torque that makes this thrust at the lowest friction (${id.replace("-", " ")})`,
    formula: "T = F\xB7dm/2\xB7tan(\u03BB + \u03C6) + F\xB7fc\xB7dc/2",
    unit: "N\xB7m",
    source: "Shigley\u2019s Mechanical Engineering Design, eq. 8-5 and 8-6.",
    terms: {
      load: term("F", "thrust that is borne", load),
      diameter: term("dm", "mean diameter", stem.meanDiameter),
      lead: term("l", "lead", stem.lead),
      angle: term("\u03B1", "half flank angle", stem.flankHalfAngle),
      friction: term("f", "thread friction, lowest", least),
      collarFriction: term("fc", "collar friction, lowest", collar?.friction ?? exactly("1", 0, none)),
      collarDiameter: term("dc", "collar diameter, lowest", collar?.diameter ?? exactly("m", 0, none))
    },
    evaluate: (at2) => stemTorque({
      load: newtons(at2("load")),
      meanDiameter: metres(at2("diameter")),
      lead: metres(at2("lead")),
      flankHalfAngle: degrees(at2("angle")),
      friction: ratio(at2("friction")),
      collarFriction: ratio(at2("collarFriction")),
      collarMeanDiameter: metres(at2("collarDiameter"))
    })
  });
}
function multiTurnFlange(given) {
  const flange = given.line.torque.flange;
  const torque2 = flange === void 0 ? null : multiTurnFlangeTorque(flange.value);
  const thrust = flange === void 0 ? null : multiTurnFlangeThrust(flange.value);
  if (flange === void 0 || torque2 === null || thrust === null) return [];
  const origin = {
    basis: "standard",
    source: `ISO 5210, flange ${flange.value}, from memory: a bound on what may pass, not on what is needed.`
  };
  const direct = lookUp(given.sheet, {
    id: "bound-flange",
    name: "Torque that the flange may pass",
    value: exactly("N\xB7m", torque2, origin)
  });
  return [
    both("flange", direct),
    both("flange thrust", thrustAsTorque(given, "flange-thrust", exactly("N", thrust, origin)))
  ];
}

// lib/duty/thrust-parts.ts
var NOTHING = exactly("N", 0, { basis: "computed", source: "Does not act on this stem." });
var GRAVITY = 9.80665;
function seatLoad({ loads, sheet }) {
  return calculate(sheet, {
    id: "seat-load",
    name: "Load on the seat area",
    formula: "Fd = \u0394p\xB7\u03C0\xB7D\xB2/4",
    unit: "N",
    source: "Definition of pressure.",
    terms: {
      pressure: term("\u0394p", "differential pressure", loads.differential),
      diameter: term("D", "seat diameter", loads.seatDiameter)
    },
    evaluate: (at2) => at2("pressure") * roundArea(metres(at2("diameter")))
  });
}

// lib/duty/special-thrusts.ts
var SEATING = spreadOf("1", [3500, 9e3, 18e3], {
  basis: "rule of thumb",
  source: "Seating load for each metre of seat, about 9 kN/m (50 lbf/in) for metal seats, from memory; common practice."
});
var TIGHT = spreadOf("Pa", [4e5, 1e6, 2e6], {
  basis: "rule of thumb",
  source: "Pressure that presses rubber tight, 4 to 20 bar over the bore; common practice, no source."
});
var OPENING_SHARE = spreadOf("1", [0.785, 0.95, 1.05], {
  basis: "assumed",
  source: "Round or square opening: area against the square of its width."
});
var DOOR_MASS = spreadOf("1", [90, 180, 320], {
  basis: "assumed",
  source: "Door and stem weigh 90 to 320 kg for each square metre of opening; common practice, no source."
});
function globeThrusts(given, parts) {
  const { line, loads, sheet } = given;
  const seat = seatLoad(given);
  const seating = calculate(sheet, {
    id: "seating-load",
    name: "Seating load",
    formula: "Fseat = q\xB7\u03C0\xB7D",
    unit: "N",
    source: SEATING.source,
    terms: {
      diameter: term("D", "seat diameter", loads.seatDiameter),
      lineLoad: term("q", "load for each metre of seat", SEATING)
    },
    evaluate: (at2) => seatingLoad({ seatDiameter: metres(at2("diameter")), lineLoad: ratio(at2("lineLoad")) })
  });
  const ways2 = flowSides(line.notes);
  const one2 = (movement) => eitherWay(
    sheet,
    movement,
    ways2.map((flow) => globe(given, { ...parts, seat, seating, flow }, movement))
  );
  return { opening: one2("opening"), closing: one2("closing") };
}
function globe({ loads, sheet }, { end, slidingPacking, seat, seating, flow }, movement) {
  const against = movement === "closing" === (flow === "under");
  const closing = movement === "closing";
  const answer = against ? "raises" : "lowers";
  return calculate(sheet, {
    id: `thrust-${movement}-flow-${flow}`,
    name: `Stem thrust, ${movement}, pressure ${flow} the disc`,
    unit: "N",
    formula: `F = ${against ? "" : "\u2212"}VF\xB7Fd + Fp ${closing ? "+ Fs + Fseat" : "\u2212 Fs"}`,
    source: "US NRC Motor-Operated Valves Course Manual, section 3.2; factor 1.1 secondary.",
    terms: {
      seat: withEffect(answer, term("Fd", "load on the seat area", seat)),
      factor: withEffect(answer, term("VF", "valve factor", loads.valveFactor)),
      packing: term("Fp", "packing that the stem slides through", slidingPacking),
      end: withEffect(closing ? "raises" : "lowers", term("Fs", "stem-end load", end)),
      seating: term("Fseat", "seating load", seating)
    },
    evaluate: (at2) => globeThrust({
      movement,
      flow,
      seatLoad: newtons(at2("seat")),
      valveFactor: ratio(at2("factor")),
      stemEnd: newtons(at2("end")),
      packing: newtons(at2("packing")),
      seating: newtons(at2("seating"))
    })
  });
}
function eitherWay(sheet, movement, each) {
  const [first2, second] = each;
  if (first2 === void 0) return NOTHING;
  const range = second === void 0 ? first2 : {
    low: Math.min(first2.low, second.low),
    nominal: Math.max(first2.nominal, second.nominal),
    high: Math.max(first2.high, second.high)
  };
  const source2 = "The side of the disc that the pressure comes from is not given: both are covered, the heavier is taken as likely.";
  return lookUp(sheet, {
    id: `thrust-${movement}`,
    name: `Stem thrust, ${movement}`,
    value: second === void 0 ? first2 : settle("N", range, { basis: "assumed", source: source2 })
  });
}
function flowSides(notes) {
  if (notes !== void 0 && /(flow|pressure)\s+(from\s+)?(under|below)|under (the )?(disc|plug|seat)/i.test(notes))
    return ["under"];
  if (notes !== void 0 && /(flow|pressure)\s+(from\s+)?(over|above)|over (the )?(disc|plug|seat)/i.test(notes))
    return ["over"];
  return ["under", "over"];
}
function squeezeThrusts({ loads, sheet }, { slidingPacking }) {
  const load = calculate(sheet, {
    id: "squeeze-load",
    name: "Load that squeezes it shut",
    formula: "F = (p + \u03C3)\xB7\u03C0\xB7D\xB2/4",
    unit: "N",
    source: TIGHT.source,
    terms: {
      pressure: term("p", "line pressure", loads.linePressure),
      tight: term("\u03C3", "pressing tight", TIGHT),
      diameter: term("D", "bore", loads.seatDiameter)
    },
    evaluate: (at2) => squeezeLoad({
      linePressure: pascals(at2("pressure")),
      squeeze: pascals(at2("tight")),
      area: squareMetres(roundArea(metres(at2("diameter"))))
    })
  });
  const closing = calculate(sheet, {
    id: "thrust-closing",
    name: "Stem thrust, closing",
    formula: "F = Fsq + Fp",
    unit: "N",
    source: "Statics; no seat friction.",
    terms: {
      load: term("Fsq", "load that squeezes it shut", load),
      packing: term("Fp", "packing that the stem slides through", slidingPacking)
    },
    evaluate: (at2) => at2("load") + at2("packing")
  });
  const value = settle(
    "N",
    { low: -load.high, nominal: -0.4 * load.nominal, high: 0.15 * load.high },
    {
      basis: "rule of thumb",
      source: "Pressure and rubber push a clamped valve open; it may stick when old; common practice, no source."
    }
  );
  return { opening: lookUp(sheet, { id: "thrust-opening", name: "Stem thrust, opening", value }), closing };
}
function penstockThrusts(given) {
  const { line, loads, sheet } = given;
  const share2 = line.stem.seatDiameter === void 0 ? OPENING_SHARE : exactly("1", Math.PI / 4, line.stem.seatDiameter);
  const water = calculate(sheet, {
    id: "water-load",
    name: "Water on the door",
    formula: "H = p\xB7k\xB7D\xB2",
    unit: "N",
    source: "Hydrostatics.",
    terms: {
      pressure: term("p", "water pressure at the door", loads.differential),
      diameter: term("D", "width or bore", loads.seatDiameter),
      share: term("k", "area against the square of the width", share2)
    },
    evaluate: (at2) => at2("pressure") * at2("share") * at2("diameter") ** 2
  });
  const weight = calculate(sheet, {
    id: "door-weight",
    name: "Weight of door and stem",
    formula: "W = m\u2033\xB7D\xB2\xB7g",
    unit: "N",
    source: DOOR_MASS.source,
    terms: {
      mass: term("m\u2033", "mass for each square metre, kg", DOOR_MASS),
      diameter: term("D", "width or bore", loads.seatDiameter)
    },
    evaluate: (at2) => at2("mass") * at2("diameter") ** 2 * GRAVITY
  });
  return {
    opening: penstock(given, { water, weight }, "opening"),
    closing: penstock(given, { water, weight }, "closing")
  };
}
function penstock({ loads, sheet }, { water, weight }, movement) {
  const up = movement === "opening";
  return calculate(sheet, {
    id: `thrust-${movement}`,
    name: `Stem thrust, ${movement}`,
    formula: up ? "F = W + \u03BC\xB7H" : "F = \u03BC\xB7H \u2212 W",
    unit: "N",
    source: "Statics of a sliding door; below zero it overhauls.",
    terms: {
      water: term("H", "water on the door", water),
      friction: term("\u03BC", "friction of the door", loads.valveFactor),
      weight: withEffect(up ? "raises" : "lowers", term("W", "weight of door and stem", weight))
    },
    evaluate: (at2) => penstockThrust({
      movement,
      weight: newtons(at2("weight")),
      friction: ratio(at2("friction")),
      waterLoad: newtons(at2("water"))
    })
  });
}

// lib/duty/stem-thrusts.ts
var LARGE_GATE = 0.6;
function stemThrusts(given) {
  const { line, character, loads, stem, sheet } = given;
  const packing = line.stem.packingLoad ?? calculate(sheet, {
    id: "packing-load",
    name: "Packing load",
    formula: "Fp = k\xB7d",
    unit: "N",
    source: loads.packingPerDiameter.source,
    terms: {
      diameter: term("d", "stem diameter", stem.diameter),
      rule: term("k", "packing friction for each metre of diameter", loads.packingPerDiameter)
    },
    evaluate: (at2) => packingFriction({ stemDiameter: metres(at2("diameter")), loadPerDiameter: ratio(at2("rule")) })
  });
  const end = calculate(sheet, {
    id: "stem-end-load",
    name: "Stem-end load",
    formula: "Fs = p\xB7\u03C0\xB7d\xB2/4",
    unit: "N",
    source: "US NRC Information Notice 92-41: always to be counted.",
    terms: {
      pressure: term("p", "line pressure", loads.linePressure),
      diameter: term("d", "stem diameter", stem.diameter)
    },
    evaluate: (at2) => stemEndLoad({ linePressure: pascals(at2("pressure")), stemDiameter: metres(at2("diameter")) })
  });
  const movesOut = character.stemKind.value !== "non-rising" && character.family !== "penstock";
  const slides = character.stemKind.value === "rising through the wheel";
  const parts = { end: movesOut ? end : NOTHING, slidingPacking: slides ? packing : NOTHING };
  const collarOnly = movesOut || character.family === "penstock" ? NOTHING : end;
  const stated2 = line.stem.thrust;
  if (stated2 !== void 0) return { opening: stated2, closing: stated2, collarOnly, packing };
  return { ...thrustsOf(given, parts), collarOnly, packing };
}
function thrustsOf(given, parts) {
  switch (given.character.family) {
    case "globe":
      return globeThrusts(given, parts);
    case "squeeze":
      return squeezeThrusts(given, parts);
    case "penstock":
      return penstockThrusts(given);
    case "gate":
    case "quarter turn":
    case "keyed":
      return gateThrusts(given, parts);
  }
}
function gateThrusts(given, parts) {
  const shared = { ...parts, seat: seatLoad(given), weight: weighs(given) ? gateWeight(given) : NOTHING };
  return { opening: gate(given, shared, "opening"), closing: gate(given, shared, "closing") };
}
function weighs({ loads, line }) {
  const faces = line.place.faces?.value;
  return loads.size.high >= LARGE_GATE && faces !== "side" && faces !== "down";
}
function gate(given, { end, slidingPacking, seat, weight }, movement) {
  const up = movement === "opening" !== (given.line.action?.value === "reverse");
  return calculate(given.sheet, {
    id: `thrust-${movement}`,
    name: `Stem thrust, ${movement}`,
    unit: "N",
    formula: up ? "F = VF\xB7Fd + Fp \u2212 Fs + W" : "F = VF\xB7Fd + Fp + Fs \u2212 W",
    source: "US NRC Motor-Operated Valves Course Manual, section 3.2; sign when opening from memory.",
    terms: {
      seat: term("Fd", "load on the seat area", seat),
      factor: term("VF", "valve factor", given.loads.valveFactor),
      packing: term("Fp", "packing that the stem slides through", slidingPacking),
      end: withEffect(up ? "lowers" : "raises", term("Fs", "stem-end load", end)),
      weight: withEffect(up ? "raises" : "lowers", term("W", "weight of the gate", weight))
    },
    evaluate: (at2) => gateThrust({
      movement: up ? "opening" : "closing",
      seatLoad: newtons(at2("seat")),
      valveFactor: ratio(at2("factor")),
      stemEnd: newtons(at2("end")),
      packing: newtons(at2("packing")),
      weight: newtons(at2("weight"))
    })
  });
}
function gateWeight({ loads, sheet }) {
  const at2 = (size, factor) => 1300 * size ** 3 * GRAVITY * factor;
  return lookUp(sheet, {
    id: "gate-weight",
    name: "Weight of the gate",
    value: settle(
      "N",
      { low: at2(loads.size.low, 0.3), nominal: at2(loads.size.nominal, 1), high: at2(loads.size.high, 2) },
      { basis: "assumed", source: "Mass of a large gate by its size; common practice, no source." }
    )
  });
}

// lib/engineering/thread-table.ts
var TRAPEZOIDAL_MEDIUM_PITCHES = [
  [10, 2],
  [12, 3],
  [16, 4],
  [22, 5],
  [30, 6],
  [38, 7],
  [46, 8],
  [55, 9],
  [65, 10],
  [85, 12],
  [110, 12],
  [120, 14],
  [150, 16],
  [190, 18]
];

// lib/engineering/thread-geometry.ts
function threadMeanDiameter({
  majorDiameter,
  pitch
}) {
  return metres(majorDiameter - pitch / 2);
}
function threadRootDiameter({ form, majorDiameter, pitch }) {
  return metres(Math.max(majorDiameter - pitch - bottomClearance({ form, pitch }), majorDiameter * 0.4));
}
function flankHalfAngle(form) {
  return degrees({ trapezoidal: 15, acme: 14.5, square: 0 }[form]);
}
function mediumPitch(majorDiameter) {
  const row = TRAPEZOIDAL_MEDIUM_PITCHES.findLast(([upFrom]) => majorDiameter >= upFrom / 1e3 - 1e-9);
  if (row === void 0) return metres(Math.max(majorDiameter / 5.5, 1e-3));
  return metres(row[1] / 1e3);
}
function bottomClearance({ form, pitch }) {
  if (form === "square") return 0;
  if (form === "acme") return 508e-6;
  if (pitch < 55e-4) return 5e-4;
  return pitch < 0.0125 ? 1e-3 : 2e-3;
}

// lib/duty/stem-lead.ts
var THREE_TURNS_AN_INCH = 0.0254 / 3;
function usualPitch(majorDiameter) {
  const range = {
    low: mediumPitch(metres(majorDiameter.low)),
    nominal: mediumPitch(metres(majorDiameter.nominal)),
    high: mediumPitch(metres(majorDiameter.high))
  };
  return settle("m", range, {
    basis: worstBasis([majorDiameter.basis, "rule of thumb"]),
    source: "Medium pitch of a trapezoidal thread of this size (ISO 2902)."
  });
}
function leadOf({
  line,
  character,
  loads,
  sheet,
  travel: travel2,
  majorDiameter,
  pitch
}) {
  const thread = line.stem.thread;
  if (thread !== void 0) {
    const starts2 = startsOf(line, sheet);
    return calculate(sheet, {
      id: "lead",
      name: "Lead",
      formula: "l = P\xB7n",
      unit: "m",
      source: "Shigley\u2019s Mechanical Engineering Design, section 8-1; ISO 2901.",
      terms: { pitch: term("P", "pitch", pitch), starts: term("n", "starts", starts2) },
      evaluate: (at2) => at2("pitch") * at2("starts")
    });
  }
  const turns2 = line.torque.turns;
  if (turns2 !== void 0 && !character.geared) {
    return calculate(sheet, {
      id: "lead",
      name: "Lead",
      formula: "l = s/N, at most 0.9\xB7d",
      unit: "m",
      source: "Geometry; a lead near the diameter of the stem is not met on valves.",
      terms: {
        travel: term("s", "travel", travel2),
        turns: withEffect("lowers", term("N", "stated turns", turns2)),
        diameter: term("d", "outside of the thread", majorDiameter)
      },
      evaluate: (at2) => Math.min(at2("travel") / at2("turns"), at2("diameter") * 0.9)
    });
  }
  const starts = line.stem.threadStarts;
  if (starts !== void 0)
    return settle(
      "m",
      { low: pitch.low * starts.value, nominal: pitch.nominal * starts.value, high: pitch.high * starts.value },
      { basis: "rule of thumb", source: "Usual pitch of this stem times the starts given." }
    );
  return lookUp(sheet, { id: "lead", name: "Lead", value: usualLead({ character, loads, pitch }) });
}
function usualLead({
  character,
  loads,
  pitch
}) {
  if (character.setting === "waterworks" && character.family === "gate") {
    const usual = shareOf(
      pitch,
      [0.95, 1.2, 1.6],
      "Usual pitch of this stem up to three turns an inch, as practice differs between countries; common practice, no source."
    );
    const cap = loads.size.high <= 0.32 ? THREE_TURNS_AN_INCH : Number.POSITIVE_INFINITY;
    return settle(
      "m",
      { low: Math.min(usual.low, cap), nominal: Math.min(usual.nominal, cap), high: Math.min(usual.high, cap) },
      usual
    );
  }
  const risesLarge = character.stemKind.value === "rising through the wheel" && loads.size.high > 0.19 && character.family !== "penstock";
  return risesLarge ? shareOf(
    pitch,
    [0.85, 1.05, 2],
    "Usual pitch of this stem; large rising stems may have two starts; common practice, no source."
  ) : shareOf(pitch, [0.85, 1, 1.25], "Usual pitch of this stem with one start; common practice, no source.");
}
function startsOf(line, sheet) {
  const thread = line.stem.thread;
  const named = thread?.value.starts;
  const column = line.stem.threadStarts;
  if (thread !== void 0 && named !== void 0 && column !== void 0 && named !== column.value) {
    const columnWins = basisRank(column.basis) < basisRank(thread.basis);
    note(sheet, {
      id: "thread-starts-conflict",
      severity: "warning",
      about: ["stem_thread", "thread_starts"],
      sentence: `The thread ${thread.value.designation} has ${named} starts but the column says ${column.value}; ${columnWins ? "the column" : "the designation"} is used. Count the thread ends on the stem.`,
      source: "ISO 2901: lead is pitch times starts."
    });
    return columnWins ? exactly("1", column.value, column) : exactly("1", named, thread);
  }
  if (column !== void 0) return exactly("1", column.value, column);
  if (thread !== void 0 && named !== void 0) return exactly("1", named, thread);
  return exactly("1", 1, { basis: "assumed", source: "One start taken: the designation names the pitch only." });
}

// lib/duty/valve-stem.ts
var TRAVELS = {
  gate: [1, 1.06, 1.15],
  globe: [0.22, 0.3, 0.4],
  squeeze: [0.45, 0.6, 0.9],
  penstock: [1, 1.03, 1.1],
  "quarter turn": [1, 1, 1],
  keyed: [0.2, 0.3, 0.5]
};
function valveStem(given) {
  const { line, character, loads, sheet } = given;
  const thread = line.stem.thread;
  const diameter = line.stem.diameter ?? (thread === void 0 ? lookUp(sheet, { id: "stem-diameter", name: "Stem diameter", value: stemBySize(given) }) : exactly("m", thread.value.majorDiameter_m, thread));
  const travel2 = line.stem.travel ?? lookUp(sheet, {
    id: "travel",
    name: "Travel",
    value: shareOf(
      loads.size,
      TRAVELS[character.family],
      "Travel by nominal size and type; common practice, no source."
    )
  });
  const form = thread?.value.form ?? "trapezoidal";
  const majorDiameter = thread === void 0 ? shareOf(diameter, [0.94, 1, 1], "Outside of the thread against the stem; common practice, no source.") : exactly("m", thread.value.majorDiameter_m, thread);
  const pitch = thread === void 0 ? usualPitch(majorDiameter) : exactly("m", thread.value.pitch_m, thread);
  const lead = leadOf({ ...given, travel: travel2, majorDiameter, pitch });
  const origin = thread ?? {
    basis: worstBasis([majorDiameter.basis, "rule of thumb"]),
    source: "From the usual trapezoidal thread of this size (ISO 2902, ISO 2904)."
  };
  const across = (size) => settle(
    "m",
    {
      low: size({ majorDiameter: metres(majorDiameter.low), pitch: metres(pitch.low) }),
      nominal: size({ majorDiameter: metres(majorDiameter.nominal), pitch: metres(pitch.nominal) }),
      high: size({ majorDiameter: metres(majorDiameter.high), pitch: metres(pitch.high) })
    },
    origin
  );
  return {
    form,
    diameter,
    majorDiameter,
    travel: travel2,
    lead,
    meanDiameter: lookUp(sheet, {
      id: "mean-diameter",
      name: "Mean diameter of the thread",
      value: across(threadMeanDiameter)
    }),
    rootDiameter: lookUp(sheet, {
      id: "root-diameter",
      name: "Root diameter of the thread",
      value: across((at2) => threadRootDiameter({ form, ...at2 }))
    }),
    flankHalfAngle: exactly(
      "\xB0",
      flankHalfAngle(form),
      thread ?? { basis: "rule of thumb", source: "Trapezoidal thread taken (ISO 2901)." }
    ),
    friction: line.stem.threadFriction ?? HOUSE_CONSTANTS.threadFriction,
    collar: collarOf({ ...given, diameter }),
    grounded: basisRank(diameter.basis) <= basisRank("standard") || thread !== void 0
  };
}
function stemBySize({ character, loads }) {
  const { size, rated } = loads;
  if (character.family === "penstock") {
    const at3 = (dn, factor) => (0.025 + 0.045 * dn) * factor;
    return settle(
      "m",
      { low: at3(size.low, 0.85), nominal: at3(size.nominal, 1), high: at3(size.high, 1.2) },
      { basis: "assumed", source: "Stem of a penstock by its size; common practice, no source." }
    );
  }
  const share2 = character.family === "globe" ? [0.85, 1, 1.15] : character.family === "squeeze" ? [0.75, 0.9, 1.1] : character.setting === "plant" ? [0.97, 1.03, 1.12] : [0.92, 1, 1.1];
  const asStandard = character.setting === "plant" && character.family === "gate" && size.low === size.high && size.high * 1e3 <= GATE_STEMS_STANDARD_UP_TO_MM && rated.high <= 2e6;
  const at2 = (dn, pressure, factor) => between({ points: GATE_STEMS_MM, x: dn * 1e3 }) / 1e3 * (character.setting === "plant" ? between({ points: STEM_GROWTH_BY_BAR, x: pressure / 1e5 }) : 1) * factor;
  const range = {
    low: at2(size.low, rated.low, asStandard ? 1 : share2[0]),
    nominal: at2(size.nominal, rated.nominal, share2[1]),
    high: at2(size.high, rated.high, share2[2])
  };
  if (asStandard)
    return settle("m", range, {
      basis: "standard",
      source: "Least stem diameter by size, API Std 600 (secondary source; class 150), up to 15 % more."
    });
  const basis = size.basis === "assumed" ? "assumed" : "rule of thumb";
  return settle("m", range, {
    basis,
    source: "Stem diameter by size and rating, after the class 150 stems of API Std 600 (part from memory)."
  });
}
function collarOf({
  line,
  character,
  loads,
  diameter
}) {
  if (character.stemKind.value === "rising with the wheel") return null;
  const meanDiameter = line.stem.collarMeanDiameter ?? settle(
    "m",
    {
      low: diameter.low * HOUSE_CONSTANTS.collarShare.low,
      nominal: diameter.nominal * HOUSE_CONSTANTS.collarShare.nominal,
      high: diameter.high * HOUSE_CONSTANTS.collarShare.high
    },
    { basis: worstBasis([diameter.basis, "rule of thumb"]), source: HOUSE_CONSTANTS.collarShare.source }
  );
  return { friction: line.stem.collarFriction ?? collarFriction({ line, character, loads }), meanDiameter };
}
function collarFriction({ line, character, loads }) {
  const bearing = line.stem.collarBearing?.value;
  if (bearing === "rolling") return HOUSE_CONSTANTS.rollingCollarFriction;
  if (bearing === "plain") return HOUSE_CONSTANTS.collarFriction;
  const mayRoll = character.family === "penstock" || character.setting === "plant" && loads.size.high >= 0.3;
  if (!mayRoll) return HOUSE_CONSTANTS.collarFriction;
  return spreadOf("1", [HOUSE_CONSTANTS.rollingCollarFriction.nominal, 0.08, HOUSE_CONSTANTS.collarFriction.high], {
    basis: "assumed",
    source: "Whether the yoke nut runs on a plain shoulder or on rolling bearings is not given; both are covered."
  });
}

// lib/duty/valve-work.ts
function workOfValve(given) {
  const { character } = given;
  const factors = startingFactors(given);
  if (character.family === "keyed") return keyed(given, factors);
  if (character.family === "quarter turn") return quarterTurn(given, factors);
  return screw(given, factors);
}
function keyed(given, factors) {
  const turns2 = keyedTurns(given);
  return {
    movement: "keyed",
    factors,
    turns: turns2,
    independentTurns: turns2,
    thread: null,
    stem: null,
    bounds: [keyedBound(given)],
    torque: {
      opening: keyedTorque({ ...given, factors }, "opening"),
      closing: keyedTorque({ ...given, factors }, "closing")
    }
  };
}
function quarterTurn(given, factors) {
  const { character, sheet, loads, line } = given;
  const atSeat = quarterTurnTorque(given);
  const shaft = {
    opening: quarterTurnAtShaft({ ...given, atSeat, factors }, "opening"),
    closing: quarterTurnAtShaft({ ...given, atSeat, factors }, "closing")
  };
  if (!character.geared) {
    const turns3 = bareQuarterTurns(loads);
    return {
      movement: "keyed",
      factors,
      turns: turns3,
      independentTurns: turns3,
      thread: null,
      stem: null,
      torque: shaft,
      bounds: [bareQuarterBound({ atSeat, sheet }), ...shaftBounds(given)]
    };
  }
  const gear = gearing(given);
  const turns2 = quarterTurnTurns({ gear, sheet });
  return {
    movement: "geared",
    factors,
    turns: turns2,
    thread: null,
    stem: null,
    independentTurns: line.torque.turns === void 0 ? turns2 : quarterTurnTurns({ gear: gearing({ ...withoutTurns(given), sheet: scratchSheet() }), sheet: scratchSheet() }),
    torque: {
      opening: atGearInput({ torque: shaft.opening, gear, sheet, direction: "opening" }),
      closing: atGearInput({ torque: shaft.closing, gear, sheet, direction: "closing" })
    },
    bounds: [gearboxBound(given), ...throughGear({ bounds: shaftBounds(given), gear, sheet })]
  };
}
function screw(given, factors) {
  const { character, sheet, line } = given;
  const stem = valveStem(given);
  const withStem = { ...given, stem };
  const whole3 = { ...withStem, thrusts: stemThrusts(withStem), factors };
  const torque2 = { opening: screwTorque(whole3, "opening"), closing: screwTorque(whole3, "closing") };
  const stemTurns = screwTurns(withStem);
  const bounds = stemBounds(withStem);
  const independent = line.torque.turns === void 0 ? stemTurns : turnsWithout(given);
  const shared = { factors, thread: dutyThread(stem), stem };
  if (!character.geared)
    return { ...shared, movement: "screw", torque: torque2, turns: stemTurns, independentTurns: independent, bounds };
  const gear = gearing(given);
  return {
    ...shared,
    movement: "geared",
    torque: {
      opening: atGearInput({ torque: torque2.opening, gear, sheet, direction: "opening" }),
      closing: atGearInput({ torque: torque2.closing, gear, sheet, direction: "closing" })
    },
    turns: multiTurnTurns({ stemTurns, gear, sheet }),
    independentTurns: multiTurnTurns({ stemTurns: independent, gear, sheet: scratchSheet() }),
    bounds: [gearboxBound(given), ...throughGear({ bounds, gear, sheet })]
  };
}
function turnsWithout(given) {
  const alone = { ...withoutTurns(given), sheet: scratchSheet() };
  return screwTurns({ ...alone, stem: valveStem(alone) });
}
function withoutTurns(given) {
  const { turns: _turns, ...torque2 } = given.line.torque;
  return { ...given, line: { ...given.line, torque: torque2 } };
}

// lib/duty/assess-duty.ts
function assessDuty({ line, site }) {
  const sheet = openSheet();
  const { line: sound, findings } = soundLine(line);
  sheet.findings.push(...findings);
  const core = workOut({ line: sound, site, sheet });
  const duty = wholeDuty({ line: sound, sheet, core });
  const tryOut = (tried) => workOut({ line: tried, site, sheet: scratchSheet() });
  return { ...duty, measureFirst: measureFirst({ line: sound, duty, steps: sheet.steps, tryOut }) };
}
function workOut({
  line,
  site,
  sheet
}) {
  const character = characterise({ line, site });
  const loads = valveLoads({ line, character, sheet });
  const wheel = wheelOf({ line, character, loads });
  const given = { line, character, loads, sheet, wheel };
  const work = workOfValve(given);
  const known2 = [...inputBounds(given), ...work.bounds];
  const guessed = known2.length > 0 ? known2 : [handBound(given)];
  const bounds = raiseGuessedBounds({ bounds: guessed, line, character, sheet });
  const opening = directionDuty({ line, sheet, work, bounds }, "opening");
  const closing = directionDuty({ line, sheet, work, bounds }, "closing");
  return { character, loads, wheel, work, bounds, opening, closing, turns: chosenTurns({ line, sheet, work }) };
}
function wholeDuty({
  line,
  sheet,
  core
}) {
  const { character, loads, wheel, work, bounds, opening, closing, turns: turns2 } = core;
  const limits = speedLimits({ line, character, loads, turns: turns2, sheet });
  strokeWorkStep({ opening, turns: turns2, sheet });
  noteFindings({ line, character, sheet, opening, closing, thread: work.thread, wheel });
  const byPosition = character.type === "penstock" || character.type === "parallel slide gate";
  return {
    tag: line.tag,
    qty: line.qty,
    strokes: line.strokes,
    movement: work.movement,
    opening,
    closing,
    turns: turns2,
    bounds,
    thread: work.thread,
    closes: line.torque.closes?.value ?? "unknown",
    minStrokeTime: limits.minStrokeTime,
    maxInputSpeed: limits.maxInputSpeed,
    grip: gripOf({ line, character, loads, stem: work.stem }),
    countTurns: turns2.high >= HOUSE_CONSTANTS.turnsThatNeedCounting.nominal || character.geared || byPosition,
    seized: line.state.condition?.value === "seized",
    findings: sheet.findings,
    steps: sheet.steps ?? [],
    measureFirst: null
  };
}
function directionDuty({ line, sheet, work, bounds }, direction) {
  const { starting, running, thrust } = chosenTorque({ line, sheet, work }, direction);
  const limit = neverExceed({ bounds, direction, sheet });
  return { starting, running, neverExceed: limit, limiter: idealWindow({ starting, limit: limit.torque }), thrust };
}
function chosenTorque({ line, sheet, work }, direction) {
  const computed = notNegative(work.torque[direction]);
  const { starting: saidStart, running: saidRun } = line.torque;
  const factor = work.factors[direction];
  if (saidStart !== void 0 && direction === "opening")
    noteDisagreement(sheet, {
      id: "starting-torque-stated-against-computed",
      about: ["starting_torque"],
      what: "starting torque",
      stated: saidStart,
      computed: computed.starting,
      unit: "N\xB7m"
    });
  if (saidRun !== void 0 && direction === "opening")
    noteDisagreement(sheet, {
      id: "running-torque-stated-against-computed",
      about: ["running_torque"],
      what: "running torque",
      stated: saidRun,
      computed: computed.running,
      unit: "N\xB7m"
    });
  const starting = saidStart ?? (saidRun === void 0 ? computed.starting : calculate(sheet, {
    id: `starting-from-running-${direction}`,
    name: `Starting torque from the running torque given, ${direction}`,
    formula: "T0 = T\xB7k",
    unit: "N\xB7m",
    source: factor.source,
    terms: { running: term("T", "running torque given", saidRun), factor: term("k", "starting factor", factor) },
    evaluate: (at2) => at2("running") * at2("factor")
  }));
  const running = saidRun ?? (saidStart === void 0 ? computed.running : calculate(sheet, {
    id: `running-from-starting-${direction}`,
    name: `Running torque from the starting torque given, ${direction}`,
    formula: "T = T0/k",
    unit: "N\xB7m",
    source: factor.source,
    terms: {
      starting: term("T0", "starting torque given", saidStart),
      factor: withEffect("lowers", term("k", "starting factor", factor))
    },
    evaluate: (at2) => at2("starting") / at2("factor")
  }));
  return { starting, running, thrust: computed.thrust };
}
function notNegative({ starting, running, thrust }) {
  const lift = (torque2) => torque2.low >= 0 ? torque2 : settle("N\xB7m", { low: 0, nominal: Math.max(0, torque2.nominal), high: Math.max(0, torque2.high) }, torque2);
  return { starting: lift(starting), running: lift(running), thrust };
}
function chosenTurns({ line, sheet, work }) {
  const stated2 = line.torque.turns;
  if (stated2 === void 0) return work.turns;
  noteDisagreement(sheet, {
    id: "turns-stated-against-computed",
    about: ["turns", "travel", "stem_thread", "gear_ratio"],
    what: "number of turns",
    stated: stated2,
    computed: work.independentTurns,
    unit: "turns"
  });
  return stated2;
}
function strokeWorkStep({
  opening,
  turns: turns2,
  sheet
}) {
  const positive = settle(
    "N\xB7m",
    {
      low: Math.max(0, opening.running.low),
      nominal: Math.max(0, opening.running.nominal),
      high: Math.max(0, opening.running.high)
    },
    opening.running
  );
  calculate(sheet, {
    id: "work-of-a-stroke",
    name: "Work of an opening stroke",
    formula: "W = 2\u03C0\xB7T\xB7N",
    unit: "J",
    source: "Definition of work.",
    terms: { torque: term("T", "running torque, opening", positive), turns: term("N", "turns", turns2) },
    evaluate: (at2) => strokeWork({ torque: newtonMetres(at2("torque")), turns: turns(at2("turns")) })
  });
}

// tests/support/duty-lines.ts
var SAID = { basis: "stated", source: "Said by the customer." };
function say2(unit, value) {
  return exactly(unit, value, SAID);
}
function sayFact(value) {
  return fact(value, SAID);
}
function lineOf(parts = {}) {
  return {
    tag: "V1",
    qty: 1,
    strokes: 2,
    process: {},
    state: {},
    stem: {},
    torque: {},
    interface: {},
    place: {},
    ...parts
  };
}
var PLAIN_SITE = {
  sourcesAllowed: ["battery", "air", "petrol"],
  shiftHours: 8,
  crews: 1,
  personsPerCrew: 2,
  moveMinutes: 10,
  startsOn: "2030-03-04",
  days: 5,
  transport: "road",
  operated: false,
  houseRules: []
};
var tr = (majorDiameter, pitch, starts) => sayFact({
  form: "trapezoidal",
  majorDiameter_m: majorDiameter / 1e3,
  pitch_m: pitch / 1e3,
  designation: `Tr${majorDiameter}x${pitch}`,
  ...starts === void 0 ? {} : { starts }
});
var wedge = {
  valveType: sayFact("wedge gate"),
  size: say2("m", 0.2),
  rating: sayFact("Class 150"),
  process: { linePressure: say2("Pa", 1e6), differentialPressure: say2("Pa", 1e6), flowing: sayFact("still") },
  state: { condition: sayFact("free") },
  stem: {
    kind: sayFact("rising through the wheel"),
    thread: tr(32, 6, 1),
    diameter: say2("m", 0.032),
    threadFriction: say2("1", 0.15),
    collarFriction: say2("1", 0.15),
    collarMeanDiameter: say2("m", 0.048),
    collarBearing: sayFact("plain"),
    packingLoad: say2("N", 2e3),
    seatDiameter: say2("m", 0.2),
    travel: say2("m", 0.21),
    valveFactor: say2("1", 0.3)
  },
  torque: { max: say2("N\xB7m", 150), closes: sayFact("clockwise") },
  interface: { drivenBy: sayFact("handwheel"), wheelDiameter: say2("m", 0.4) }
};

// tests/support/plausible-schedule.ts
var PLAUSIBLE_SITE = { ...PLAIN_SITE, vehicleAccess: true, airPressure: say2("Pa", 7e5), airFlow: say2("m\xB3/s", 0.05) };
var SIZES = [
  { size: 0.08, turns: 12, torque: 35, wheel: 0.2, nut: 0.019 },
  { size: 0.1, turns: 16, torque: 50, wheel: 0.25, nut: 0.024 },
  { size: 0.15, turns: 22, torque: 80, wheel: 0.3, nut: 0.029 },
  { size: 0.2, turns: 28, torque: 120, wheel: 0.35, nut: 0.029 },
  { size: 0.25, turns: 34, torque: 170, wheel: 0.4, nut: 0.032 },
  { size: 0.3, turns: 40, torque: 230, wheel: 0.5, nut: 0.032 },
  { size: 0.4, turns: 52, torque: 340, wheel: 0.6, nut: 0.036 },
  { size: 0.5, turns: 66, torque: 480, wheel: 0.7, nut: 0.036 },
  { size: 0.6, turns: 80, torque: 650, wheel: 0.8, nut: 0.05 }
];
var SORTS = 8;
function plausibleSchedule(at2) {
  const random = seededRandom(at2.seed);
  const drawing = {
    random,
    pick: (values) => {
      const value = values[Math.floor(random() * values.length)];
      if (value === void 0) throw new Error("Nothing to pick from.");
      return value;
    },
    chance: (share2) => random() < share2
  };
  const sorts = Array.from(
    { length: Math.min(at2.lines, Math.round(SORTS * Math.sqrt(at2.lines))) },
    () => drawing.chance(0.45) ? streetLine(drawing) : plantLine(drawing)
  );
  return Array.from({ length: at2.lines }, (_, index) => ({ ...drawing.pick(sorts), tag: `V-${index + 1}` }));
}
function streetLine({ pick, chance }) {
  const { size, turns: turns2, torque: torque2, nut } = pick(SIZES);
  const factor = pick([0.8, 1, 1.25]);
  const depth = pick([0.6, 0.9, 1.2, 1.5]);
  return lineOf({
    valveType: sayFact("gate"),
    size: say2("m", size),
    state: { condition: sayFact(pick(["free", "free", "stiff"])) },
    torque: { turns: say2("turn", turns2), ...torques({ torque: torque2 * factor, isKnown: chance(0.7) }) },
    interface: {
      drivenBy: sayFact("nut"),
      nutShape: sayFact("square"),
      nut: { acrossFlats: chance(0.7) ? say2("m", nut) : ranged("m", nut - 3e-3, nut + 4e-3) }
    },
    place: {
      depthToNut: chance(0.6) ? say2("m", depth) : ranged("m", depth, depth + 0.3),
      anchor: sayFact("none"),
      surface: sayFact("asphalt"),
      faces: sayFact("up"),
      accessTime: say2("s", pick([60, 120, 300])),
      ...chance(0.1) ? { misalignment: say2("\xB0", 10) } : {}
    }
  });
}
function plantLine({ pick, chance }) {
  const { size, turns: turns2, torque: torque2, wheel } = pick(SIZES);
  const factor = pick([0.8, 1, 1.25]);
  const rises2 = chance(0.25);
  return lineOf({
    valveType: sayFact(pick(["gate", "wedge gate", "globe"])),
    size: say2("m", size),
    state: { condition: sayFact(pick(["free", "free", "stiff"])) },
    stem: {
      kind: sayFact(rises2 ? "rising through the wheel" : "non-rising"),
      ...rises2 ? { diameter: say2("m", 0.024 + size / 20), travel: say2("m", size) } : {}
    },
    torque: { turns: say2("turn", turns2), ...torques({ torque: torque2 * factor, isKnown: chance(0.7) }) },
    interface: {
      drivenBy: sayFact("handwheel"),
      wheelDiameter: chance(0.7) ? say2("m", wheel) : ranged("m", wheel - 0.05, wheel + 0.1),
      ...chance(0.5) ? { wheelSpokes: sayFact(pick([3, 4, 5, 6])) } : {},
      ...rises2 ? { stemProtrusion: say2("m", size), protrusionMeasuredAt: sayFact("open") } : {}
    },
    place: {
      anchor: sayFact(pick(["structure", "structure", "large pipe", "none"])),
      faces: sayFact(pick(["up", "up", "side"])),
      surface: sayFact("concrete"),
      accessTime: say2("s", pick([60, 180, 420])),
      ...chance(0.15) ? { reach: say2("m", 1.1) } : {},
      ...chance(0.15) ? { clearRadius: say2("m", 0.6) } : {}
    }
  });
}
function torques(at2) {
  const max = { max: say2("N\xB7m", Math.round(at2.torque * 2.2)), closes: sayFact("clockwise") };
  if (!at2.isKnown) return max;
  return { ...max, starting: say2("N\xB7m", Math.round(at2.torque)), running: say2("N\xB7m", Math.round(at2.torque * 0.45)) };
}

// lib/duty/assess-duties.ts
function assessDuties({
  lines: lines2,
  site
}) {
  const known2 = /* @__PURE__ */ new Map();
  return lines2.map((line) => {
    const key = whatCounts(line);
    const duty = known2.get(key) ?? assessDuty({ line, site });
    known2.set(key, duty);
    return { ...duty, tag: line.tag };
  });
}
function whatCounts(line) {
  const { tag: _tag, notes, photo: _photo, place, ...rest } = line;
  const { location: _location, placeOrder: _order, accessTime: _access, ...where } = place;
  return JSON.stringify([rest, where, isBuried(line), flowSides(notes)]);
}

// lib/kits/class-key.ts
var LEFT_OUT = /* @__PURE__ */ new Set([
  "tag",
  "qty",
  "source",
  "steps",
  "findings",
  "bounds",
  "measureFirst",
  "location",
  "placeOrder",
  "notes",
  "photo"
]);
var HEARD_IN_NOTES = [/bent (stem|spindle)|(stem|spindle) (is )?bent/i, /spinner|crank handle|knob/i];
function classKey(line, duty) {
  const { process: process2, stem, torque: torque2, ...rest } = line;
  const kept = {
    duty,
    line: rest,
    heard: [process2.service?.value, stem.kind?.value, torque2.gearbox?.value],
    inNotes: HEARD_IN_NOTES.map((pattern) => pattern.test(line.notes ?? ""))
  };
  return JSON.stringify(kept, (key, value) => LEFT_OUT.has(key) ? void 0 : value);
}
function shortName(key) {
  let hash = 0xcbf29ce484222325n;
  for (let index = 0; index < key.length; index += 1) {
    hash = BigInt.asUintN(64, (hash ^ BigInt(key.charCodeAt(index))) * 0x100000001b3n);
  }
  return `c-${hash.toString(36)}`;
}

// lib/rules/rule.ts
function judge(rule, facts) {
  return rule.speaks(facts) ? findingOf(rule, facts) : null;
}
function findingOf(rule, facts) {
  return {
    id: rule.id,
    severity: rule.severity,
    about: [...rule.speaksOf, ...partNumbers(facts)],
    sentence: rule.sentence(facts),
    source: rule.source
  };
}
function partNumbers(facts) {
  if ("part" in facts) return [facts.part.number];
  if ("upstream" in facts) return [facts.upstream.number, facts.downstream.number];
  if ("gripCase" in facts) return [facts.adapter.number];
  const numbers = [];
  if ("core" in facts) {
    const { drive, head } = facts.core;
    numbers.push(drive.number, head.number);
    if ("limiter" in facts.core) {
      for (const option of [facts.core.limiter, facts.core.counter]) if (option !== null) numbers.push(option.number);
    }
  }
  if ("extensions" in facts) numbers.push(...facts.extensions.map((extension) => extension.number));
  if ("adapter" in facts) numbers.push(facts.adapter.number);
  if ("links" in facts) {
    for (const { adapter, extensions } of facts.links) {
      numbers.push(...extensions.map((extension) => extension.number), adapter.number);
    }
  }
  if ("restraint" in facts) numbers.push(facts.restraint.number);
  return numbers;
}

// lib/solver/minimal-conflict.ts
function minimalConflict(problem) {
  let checks = 0;
  const possible = (kept) => {
    checks += 1;
    return problem.possible(kept);
  };
  if (possible(problem.items)) return { conflict: null, checks };
  if (!possible([])) return { conflict: [], checks };
  const explain = (background, added, items) => {
    if (added.length > 0 && !possible(background)) return [];
    if (items.length === 1) return items;
    const half = Math.ceil(items.length / 2);
    const first2 = items.slice(0, half);
    const second = items.slice(half);
    const fromSecond = explain([...background, ...first2], first2, second);
    const fromFirst = explain([...background, ...fromSecond], fromSecond, first2);
    return [...fromFirst, ...fromSecond];
  };
  return { conflict: explain([], [], problem.items), checks };
}

// lib/equipment/coupling.ts
function joins(a, b) {
  return a.form === b.form && a.size === b.size && a.gender !== b.gender;
}

// lib/engineering/chain-torque.ts
function chainFactor(stages) {
  return {
    low: ratio(stages.reduce((factor, stage) => factor * stage.ratio * stage.efficiency.low, 1)),
    high: ratio(stages.reduce((factor, stage) => factor * stage.ratio * stage.efficiency.high, 1))
  };
}

// lib/engineering/duty-cycle.ts
function timeWithRests({
  running,
  continuousRun,
  restAfterRun
}) {
  invariant(continuousRun > 0, "A drive runs for some time before it rests.");
  const rests = Math.max(0, Math.ceil(running / continuousRun - 1e-9) - 1);
  return seconds(running + rests * restAfterRun);
}

// lib/engineering/energy.ts
function breakawayWork({
  starting,
  running,
  turns: turns2,
  startingTurns
}) {
  const first2 = Math.min(turns2, startingTurns);
  return joules(2 * Math.PI * (first2 * (starting + running) / 2 + (turns2 - first2) * running));
}

// lib/engineering/reaction.ts
var UNEQUAL_SHARE = 0.2;
function reactionForce({
  torque: torque2,
  arm,
  pullAngle
}) {
  const lever = arm * Math.sin(pullAngle * Math.PI / 180);
  invariant(lever > 0, "A pull along the arm, or an arm without length, holds nothing.");
  return newtons(torque2 / lever);
}
function highestTorque({
  stallAtValve,
  limiter
}) {
  if (limiter === null) return stallAtValve;
  const limited2 = (limiter.ceiling * (1 + limiter.error) + limiter.overshoot) * limiter.factorHigh;
  return newtonMetres(Math.min(stallAtValve, limited2));
}
function sideLoad({
  force,
  anchoring
}) {
  return newtons(anchoring === "single anchor" ? force : force * UNEQUAL_SHARE);
}
function forceWithShock({ force, shock }) {
  return newtons(force * shock);
}
function needsSecondChain({
  directions,
  strokes
}) {
  return directions === "one way" && strokes > 1;
}

// lib/engineering/stroke-time.ts
function strokeTime({
  turns: turns2,
  speed,
  slowTurns,
  slowSpeed,
  startTime,
  toAndFro: toAndFro2
}) {
  invariant(speed > 0 && slowSpeed > 0, "A stroke takes a speed above nought.");
  const slow = Math.min(turns2, slowTurns);
  const slowest = Math.min(speed, slowSpeed);
  return seconds(startTime + toAndFro2 * (turns2 - slow) * 60 / speed + slow * 60 / slowest);
}

// lib/engineering/torque-speed.ts
function speedAtTorque({
  gear,
  torque: torque2
}) {
  invariant(gear.stallTorque > 0 && gear.freeSpeed > 0, "A gear has a stall torque and a free speed above nought.");
  if (torque2 >= gear.stallTorque) return perMinute(0);
  if (torque2 <= 0) return gear.freeSpeed;
  if (gear.curve === void 0) return perMinute(gear.freeSpeed * (1 - torque2 / gear.stallTorque));
  return perMinute(between({ points: pointsOf(gear, gear.curve), x: torque2 }));
}
function scaleGear({
  gear,
  torqueFactor,
  speedFactor
}) {
  const scaled = {
    ...gear,
    stallTorque: newtonMetres(gear.stallTorque * torqueFactor),
    freeSpeed: perMinute(gear.freeSpeed * speedFactor)
  };
  if (gear.curve === void 0) return scaled;
  const curve = gear.curve.map((point) => ({
    torque: newtonMetres(point.torque * torqueFactor),
    speed: perMinute(point.speed * speedFactor)
  }));
  return { ...scaled, curve };
}
function pointsOf(gear, curve) {
  const inner = curve.filter((point) => point.torque > 0 && point.torque < gear.stallTorque);
  const rising = inner.map((point) => [point.torque, point.speed]).toSorted((a, b) => a[0] - b[0]);
  return [[0, gear.freeSpeed], ...rising, [gear.stallTorque, 0]];
}

// lib/equipment/working-constants.ts
var WORKING_CONSTANTS = {
  /** Share of the stall torque that a drive surely gives for the moment of starting, store not full; common practice, no source. */
  startShare: ratio(0.85),
  /** Shock of a stall against a slack anchor; judgement, no source. */
  shock: ratio(2),
  /** A pull that is kept within 30° of square to the arm; common practice, no source. */
  pullAngle: degrees(60),
  /** Turns at both ends together that are done slowly or by hand; common practice, no source. */
  slowTurns: turns(4),
  slowSpeed: perMinute(12),
  /** Speed below which a stroke is not worth counting; keeps times finite for chains that are refused. */
  crawl: perMinute(0.2),
  /** Taking up slack and starting in steps; common practice, no source. */
  startTime: seconds(20),
  /** Powered turns of a stiff valve that is worked to and fro; common practice, no source. */
  toAndFro: ratio(1.5),
  /** Years without a stroke after which a valve is taken to be stiff; common practice, no source. */
  stiffAfterYears: 5,
  /** Turns over which the torque falls from starting to running; common practice, no source. */
  startingTurns: turns(2),
  /** Putting drive and head together on the valve; common practice, no source. */
  mountTime: seconds(150),
  extensionTime: seconds(40),
  secondChainTime: seconds(60),
  /** Hose between the site's outlet and the tool, with its couplings; assumed where nothing is said. */
  hoseLength: metres(20),
  hoseCouplings: 4,
  /** What is left to an air motor below the pressures that the table of motors covers; judgement, no source. */
  starvedAir: { torque: ratio(0.3), speed: ratio(0.5) },
  /** Drive and head above this want a sling when they hang from a wheel; common practice, no source. */
  hangingMass: kilograms(12),
  /** Wheels of unknown diameter; common practice, no source. */
  anyWheel: { low: metres(0.15), high: metres(0.9) },
  /** Shapes that a nut or square of unknown shape is taken to have; common practice, no source. */
  usualNutShapes: ["tapered square", "square"],
  /** Part of a pack's energy that is used before it is changed; common practice, no source. */
  packShare: ratio(0.8)
};

// lib/kits/limiter-settings.ts
var LIMITER_MARGIN = HOUSE_CONSTANTS.limiterMargin.nominal;
var NO_SETTINGS = { unseat: null, run: null, seat: null };
function limiterSettings({ limiter, duty, direction, upTo }) {
  const never = duty.neverExceed.torque.low;
  const neverExceedLow = upTo === "needed" ? never : newtonMetres(Math.min(never, upTo));
  const ask2 = { neverExceedLow, margin: LIMITER_MARGIN, limiter, factor: limiter.factor };
  const whole3 = { low: newtonMetres(Math.min(duty.running.low, duty.starting.low)), high: duty.starting.high };
  if (direction === "opening") {
    return {
      unseat: limiterMarks({ ...ask2, torque: duty.starting, stopAt: upTo === "needed" ? "needed" : "never-exceed" }),
      run: limiterMarks({ ...ask2, torque: duty.running, stopAt: "needed" }),
      seat: null
    };
  }
  return {
    unseat: null,
    run: limiterMarks({ ...ask2, torque: whole3, stopAt: "needed" }),
    seat: limiterMarks({ ...ask2, torque: { low: duty.running.low, high: duty.starting.high }, stopAt: "needed" })
  };
}
function ceilingOf(settings) {
  const { unseat, run, seat } = settings;
  const marks = [unseat, run, seat].filter((setting) => setting !== null);
  return marks.length === 0 ? null : newtonMetres(Math.max(...marks.map((setting) => setting.ceiling)));
}
function allowedSetting({ limiter, duty }) {
  const marks = limiterMarks({
    torque: duty.starting,
    neverExceedLow: duty.neverExceed.torque.low,
    margin: LIMITER_MARGIN,
    limiter: { ...limiter, highest: newtonMetres(1e9) },
    factor: limiter.factor,
    stopAt: "never-exceed"
  });
  return marks?.ceiling ?? 0;
}

// lib/engineering/air-supply.ts
var PSI_PA = 6894.757;
var FOOT_M = 0.3048;
var INCH_M = 0.0254;
var CFM_M3_PER_S = 4719474e-10;
var TEXTBOOK_ATMOSPHERE_PSI = 14.7;
function hoseLoss({
  length,
  bore,
  freeAir,
  pressure
}) {
  invariant(bore > 0, "A hose has a bore.");
  const compression = (pressure / PSI_PA + TEXTBOOK_ATMOSPHERE_PSI) / TEXTBOOK_ATMOSPHERE_PSI;
  const flow = freeAir / CFM_M3_PER_S / 60;
  const loss = 0.1025 * (length / FOOT_M) * flow ** 2 / (compression * (bore / INCH_M) ** 5.31);
  return pascals(loss * PSI_PA);
}
function pressureAtTool({
  supplyPressure,
  length,
  bore,
  couplings,
  freeAir
}) {
  const equivalent = length + couplings * 100 * bore;
  const loss = hoseLoss({ length: equivalent, bore, freeAir, pressure: supplyPressure });
  return pascals(Math.max(0, supplyPressure - loss));
}
var POWER_BY_BAR = [
  [3, 0.33],
  [4, 0.51],
  [5, 0.71],
  [6, 0.94],
  [6.3, 1],
  [7, 1.13]
];
var SPEED_BY_BAR = [
  [3, 0.73],
  [4, 0.85],
  [5, 0.93],
  [6, 0.99],
  [6.3, 1],
  [7, 1.01]
];
var TORQUE_BY_BAR = [
  [3, 0.48],
  [4, 0.63],
  [5, 0.79],
  [6, 0.95],
  [6.3, 1],
  [7, 1.09]
];
var AIR_BY_BAR = [
  [3, 0.44],
  [4, 0.61],
  [5, 0.77],
  [6, 0.96],
  [6.3, 1],
  [7, 1.11]
];
function airMotorFactors(pressure) {
  const x = pressure / 1e5;
  if (x < 3 - 1e-9) return null;
  return {
    power: ratio(between({ points: POWER_BY_BAR, x })),
    speed: ratio(between({ points: SPEED_BY_BAR, x })),
    torque: ratio(between({ points: TORQUE_BY_BAR, x })),
    air: ratio(between({ points: AIR_BY_BAR, x }))
  };
}

// lib/engineering/petrol-derating.ts
var FOOT_M2 = 0.3048;
function altitudeShare(altitude) {
  const above = Math.max(0, altitude / FOOT_M2 - 500);
  return ratio(Math.max(0, 1 - 0.03 * above / 1e3));
}
function heatShare(temperature) {
  const fahrenheit = temperature * 1.8 + 32;
  return ratio(1 - 0.01 * Math.max(0, fahrenheit - 85) / 10);
}

// lib/kits/kit-constants.ts
var LARGEST_COVER = 3;
var COVERS_KEPT = 60;
var wholeSeconds = (value) => seconds(Math.round(value));
var share = (value) => ratio(Math.min(1, Math.max(0, value)));

// lib/kits/supply-share.ts
var FULL = { torque: ratio(1), speed: ratio(1), pressure: 1 };
function supplyShare({ drive, site }) {
  const { power } = drive.facts;
  switch (power.kind) {
    case "battery":
      return FULL;
    case "petrol": {
      const high = site.altitude === void 0 ? 1 : altitudeShare(site.altitude.high);
      const hot = site.temperature === void 0 ? 1 : heatShare(site.temperature.high);
      return { torque: share(high * hot), speed: ratio(1), pressure: 1 };
    }
    case "air":
      return airShare({ power, site });
  }
}
function airShare({ power, site }) {
  if (site.airPressure === void 0) return FULL;
  const atTool = pressureAtTool({
    supplyPressure: site.airPressure.low,
    length: WORKING_CONSTANTS.hoseLength,
    bore: power.hoseBore,
    couplings: WORKING_CONSTANTS.hoseCouplings,
    freeAir: power.consumption
  });
  const rated = airMotorFactors(power.ratedPressure);
  const real = airMotorFactors(atTool);
  const pressure = atTool / power.ratedPressure;
  if (rated === null || real === null) return { ...WORKING_CONSTANTS.starvedAir, pressure };
  return { torque: share(real.torque / rated.torque), speed: share(real.speed / rated.speed), pressure };
}

// lib/kits/core-figures.ts
var newCoreMemo = () => ({
  meshes: /* @__PURE__ */ new Map(),
  limiters: /* @__PURE__ */ new Map(),
  supply: /* @__PURE__ */ new Map(),
  visit: null
});
function coreFigures(input, memo = newCoreMemo()) {
  memo.visit ??= visitOf(input.facts);
  const { visit } = memo;
  const mesh = meshOf(input, { memo, visit });
  return figuresAt({ input, mesh, visit, at: limiterAt(input, { memo, factor: mesh.factor }) });
}
function unlimitedFigures(input, memo) {
  memo.visit ??= visitOf(input.facts);
  const { visit } = memo;
  return figuresAt({ input, mesh: meshOf(input, { memo, visit }), visit, at: null });
}
function figuresAt({ input, mesh, visit, at: at2 }) {
  const opening = directionFigures({ direction: "opening", input, mesh, visit, at: at2 });
  const closing = directionFigures({ direction: "closing", input, mesh, visit, at: at2 });
  return {
    totalRatio: input.frame.head.facts.ratio,
    factor: mesh.factor,
    stallAtValve: mesh.stallAtValve,
    stallAtDrive: mesh.stallAtDrive,
    sureAtValve: mesh.sureAtValve,
    highestAtValve: opening.highest > closing.highest ? opening.highest : closing.highest,
    neverExceed: visit.neverExceed,
    limiterRequired: mesh.limiterRequired,
    limiter: at2?.limiter ?? null,
    inputSpeed: mesh.inputSpeed,
    opening,
    closing,
    energyPerVisit: visit.energy,
    runTime: mesh.runTime,
    supplyShare: mesh.supplyShare
  };
}
function visitOf(facts) {
  const { opening, closing } = facts.duty;
  const nevers = [opening.neverExceed.torque, closing.neverExceed.torque];
  const wanted = ({ starting }) => Math.min(starting.high, starting.nominal * LIMITER_MARGIN);
  return {
    energy: visitEnergy(facts),
    neverExceed: newtonMetres(Math.min(...nevers.map((never) => never.low))),
    isNeverGuessed: nevers.some((never) => never.basis === "rule of thumb" || never.basis === "assumed"),
    wanted: { opening: wanted(opening), closing: wanted(closing) },
    toAndFro: isStiff(facts) ? WORKING_CONSTANTS.toAndFro : 1
  };
}
function meshOf(input, at2) {
  const { drive, head } = input.frame;
  let ofDrive = at2.memo.meshes.get(drive);
  if (ofDrive === void 0) at2.memo.meshes.set(drive, ofDrive = /* @__PURE__ */ new Map());
  let gears = ofDrive.get(head);
  if (gears === void 0) ofDrive.set(head, gears = []);
  const mesh = gears[input.gearIndex] ?? makeMesh(input, at2);
  gears[input.gearIndex] = mesh;
  return mesh;
}
function makeMesh({ facts, frame, gearIndex }, { memo, visit }) {
  const { drive, head } = frame;
  const gear = drive.facts.gears[gearIndex];
  invariant(gear !== void 0, `Drive ${drive.number} has no gear ${gearIndex}.`);
  const supply = memo.supply.get(drive) ?? supplyShare({ drive, site: facts.site });
  memo.supply.set(drive, supply);
  const factor = chainFactor([{ ratio: head.facts.ratio, efficiency: head.facts.efficiency }]);
  const stallAtDrive = newtonMetres(Math.max(...drive.facts.gears.map((one2) => one2.stallTorque)));
  const stallAtValve = newtonMetres(stallAtDrive * factor.high);
  const full = supply.torque === 1 && supply.speed === 1;
  const real = full ? gear : scaleGear({ gear, torqueFactor: supply.torque, speedFactor: supply.speed });
  const way = (duty) => {
    const speeds = speedsOf({ gear, real, factor, total: head.facts.ratio, duty });
    return { ...speeds, strokeTime: strokeTimes({ facts, toAndFro: visit.toAndFro, ...speeds }) };
  };
  const opening = way(facts.duty.opening);
  const closing = way(facts.duty.closing);
  return {
    factor,
    stallAtValve,
    stallAtDrive,
    sureAtValve: newtonMetres(gear.ratedTorque * supply.torque * factor.low),
    limiterRequired: stallAtValve > visit.neverExceed || visit.isNeverGuessed,
    inputSpeed: gear.freeSpeed,
    supplyShare: supply.pressure,
    start: gear.stallTorque * WORKING_CONSTANTS.startShare * supply.torque * factor.low,
    opening,
    closing,
    runTime: runTime({ facts, opening, closing })
  };
}
function limiterAt(input, { memo, factor }) {
  const { drive, head, limiter: option } = input.frame;
  if (option === null && drive.facts.limiter === null) return null;
  const owner = option ?? drive;
  let ofOwner = memo.limiters.get(owner);
  if (ofOwner === void 0) memo.limiters.set(owner, ofOwner = /* @__PURE__ */ new Map());
  const where = option?.facts.sits === "after head" ? "any head" : head;
  const known2 = ofOwner.get(where);
  if (known2 !== void 0) return known2;
  const limiter = limiterInChain(input.frame, factor);
  if (limiter === null) return null;
  const reach = (direction) => {
    const ask2 = { limiter, duty: input.facts.duty[direction], direction, upTo: input.limiterUpTo };
    return { ceiling: ceilingOf(limiterSettings(ask2)), allowed: allowedSetting(ask2) };
  };
  const made = { limiter, opening: reach("opening"), closing: reach("closing") };
  ofOwner.set(where, made);
  return made;
}
function strokesEachWay(strokes) {
  return { both: Math.floor(strokes / 2), odd: strokes % 2 };
}
function visitStrokeTime({
  facts,
  figures,
  continuousRun,
  restAfterRun
}) {
  const nominal = (way) => (way.strokeTime.low + way.strokeTime.high) / 2;
  const { both: both3, odd } = strokesEachWay(facts.duty.strokes);
  const opening = nominal(figures.opening);
  const closing = nominal(figures.closing);
  const running = seconds(both3 * (opening + closing) + odd * Math.max(opening, closing));
  return timeWithRests({ running, continuousRun, restAfterRun });
}
function limiterInChain(frame, factor) {
  const built = frame.drive.facts.limiter;
  if (frame.limiter === null) return built === null ? null : { ...built, factor, number: frame.drive.number };
  const { lowest, highest, error, overshoot, step, bothDirections, sits } = frame.limiter.facts;
  invariant(
    lowest !== void 0 && highest !== void 0 && error !== void 0 && step !== void 0,
    `Limiter ${frame.limiter.number} lacks its range, error or step.`
  );
  const after = sits === "after drive" ? factor : { low: ratio(1), high: ratio(1) };
  return {
    lowest,
    highest,
    error,
    overshoot: overshoot ?? newtonMetres(0),
    step,
    bothDirections: bothDirections ?? false,
    factor: after,
    number: frame.limiter.number
  };
}
function directionFigures({ direction, input, mesh, visit, at: at2 }) {
  const { fastest: fastest2, speed, strokeTime: times2 } = mesh[direction];
  const wanted = visit.wanted[direction];
  if (at2 === null || direction === "closing" && !at2.limiter.bothDirections) {
    return {
      ceiling: null,
      highest: mesh.stallAtValve,
      sure: newtonMetres(mesh.start),
      needed: newtonMetres(Math.min(wanted, input.facts.duty[direction].neverExceed.torque.low)),
      fastest: fastest2,
      speed,
      strokeTime: times2
    };
  }
  const { limiter } = at2;
  const { ceiling, allowed } = at2[direction];
  const highest = ceiling === null ? mesh.stallAtValve : highestTorque({
    stallAtValve: mesh.stallAtValve,
    limiter: { ceiling, error: limiter.error, overshoot: limiter.overshoot, factorHigh: limiter.factor.high }
  });
  return {
    ceiling,
    highest,
    sure: newtonMetres(Math.min(mesh.start, surely(limiter, ceiling ?? 0))),
    needed: newtonMetres(Math.min(wanted, surely(limiter, allowed))),
    fastest: fastest2,
    speed,
    strokeTime: times2
  };
}
function surely(limiter, setting) {
  return setting * (1 - limiter.error) * limiter.factor.low;
}
function speedsOf(at2) {
  const { gear, real, factor, total, duty } = at2;
  const middle = (factor.low + factor.high) / 2;
  const fastest2 = speedAtTorque({ gear, torque: newtonMetres(duty.running.low / factor.high) }) / total;
  const speed = speedAtTorque({ gear: real, torque: newtonMetres(duty.running.nominal / middle) }) / total;
  return { fastest: perMinute(fastest2), speed: perMinute(speed) };
}
function isStiff(facts) {
  return facts.line.state.condition?.value === "stiff" || (yearsIdle(facts) ?? 0) > WORKING_CONSTANTS.stiffAfterYears;
}
function strokeTimes(at2) {
  const time = (turns3, speed, toAndFro2) => strokeTime({
    turns: turns3,
    speed: perMinute(Math.max(WORKING_CONSTANTS.crawl, speed)),
    slowTurns: WORKING_CONSTANTS.slowTurns,
    slowSpeed: WORKING_CONSTANTS.slowSpeed,
    startTime: WORKING_CONSTANTS.startTime,
    toAndFro: ratio(toAndFro2)
  });
  const { turns: turns2 } = at2.facts.duty;
  const low = time(turns2.low, at2.fastest, 1);
  return { low, high: seconds(Math.max(low, time(turns2.high, at2.speed, at2.toAndFro))) };
}
function visitEnergy(facts) {
  const { opening, closing, turns: turns2, strokes } = facts.duty;
  const work = (way) => breakawayWork({
    starting: way.starting.high,
    running: way.running.high,
    turns: turns2.high,
    startingTurns: WORKING_CONSTANTS.startingTurns
  });
  const { both: both3, odd } = strokesEachWay(strokes);
  const stiff = isStiff(facts) ? WORKING_CONSTANTS.toAndFro : 1;
  return joules(stiff * (both3 * (work(opening) + work(closing)) + odd * Math.max(work(opening), work(closing))));
}
function runTime(at2) {
  const { turns: turns2, strokes } = at2.facts.duty;
  const one2 = (way) => turns2.nominal * 60 / Math.max(WORKING_CONSTANTS.crawl, way.speed);
  const { both: both3, odd } = strokesEachWay(strokes);
  return seconds(both3 * (one2(at2.opening) + one2(at2.closing)) + odd * Math.max(one2(at2.opening), one2(at2.closing)));
}

// lib/kits/grip-cases.ts
var { anyWheel: ANY_WHEEL, usualNutShapes: USUAL_SHAPES } = WORKING_CONSTANTS;
function gripCases({
  facts,
  adapters
}) {
  const likeliest = likeliestCase(facts);
  if (likeliest === null) return [];
  const cases = likeliest.kind === "wheel" ? wheelCases(facts, adapters) : nutCases(facts);
  return [...cases, likeliest];
}
function likeliestCase(facts) {
  const { grip } = facts.duty;
  if (grip.kind === "none") return null;
  if (grip.kind === "wheel") {
    return {
      kind: "wheel",
      diameter_m: grip.wheelDiameter?.nominal ?? (ANY_WHEEL.low + ANY_WHEEL.high) / 2,
      spokes: grip.wheelSpokes === void 0 ? null : Math.round((grip.wheelSpokes.low + grip.wheelSpokes.high) / 2),
      dish_deg: grip.wheelDish?.nominal ?? 0
    };
  }
  return {
    kind: "nut",
    shape: grip.nutShape ?? USUAL_SHAPES[0],
    acrossFlats_m: grip.nutSizes?.[0]?.nominal ?? null,
    depth_m: grip.depthToNut?.nominal ?? 0
  };
}
function wheelCases(facts, adapters) {
  const { grip } = facts.duty;
  const low = grip.wheelDiameter?.low ?? ANY_WHEEL.low;
  const high = grip.wheelDiameter?.high ?? ANY_WHEEL.high;
  const edges = /* @__PURE__ */ new Set([low, high]);
  for (const { facts: adapter } of adapters) {
    for (const edge of [adapter.wheel?.diameter.low, adapter.wheel?.diameter.high]) {
      if (edge !== void 0 && edge > low && edge < high) edges.add(edge);
    }
  }
  const dish_deg = grip.wheelDish?.high ?? 0;
  const spokes = spokeCounts(facts);
  return withMiddles([...edges].toSorted((a, b) => a - b)).flatMap(
    (diameter_m) => spokes.map((count) => ({ kind: "wheel", diameter_m, spokes: count, dish_deg }))
  );
}
function spokeCounts({ duty }) {
  const range = duty.grip.wheelSpokes;
  if (range === void 0) return [null];
  return Array.from({ length: range.high - range.low + 1 }, (_, step) => range.low + step);
}
function nutCases({ duty }) {
  const { grip } = duty;
  const sizes = grip.nutSizes ?? [];
  const across = sizes.length === 0 ? [null] : [...new Set(sizes.flatMap((size) => withMiddles([.../* @__PURE__ */ new Set([size.low, size.high])])))];
  const depths = grip.depthToNut === void 0 ? [0] : withMiddles([.../* @__PURE__ */ new Set([grip.depthToNut.low, grip.depthToNut.high])]);
  const shapes = grip.nutShape === void 0 ? USUAL_SHAPES : [grip.nutShape];
  return across.flatMap(
    (acrossFlats_m) => depths.flatMap((depth_m) => shapes.map((shape) => ({ kind: "nut", shape, acrossFlats_m, depth_m })))
  );
}
function withMiddles(sorted) {
  return sorted.flatMap((value, index) => {
    const next = sorted[index + 1];
    return next === void 0 ? [value] : [value, (value + next) / 2];
  });
}

// lib/rules/say-number.ts
function sayTorque(value) {
  return `${threeDigits(value)} N\xB7m`;
}
function sayForce(value) {
  return Math.abs(value) >= 1e3 ? `${threeDigits(value / 1e3)} kN` : `${threeDigits(value)} N`;
}
function sayLength(value_m) {
  return Math.abs(value_m) >= 2 ? `${threeDigits(value_m)} m` : `${grouped(Math.round(value_m * 1e3))} mm`;
}
function sayMass(value) {
  return `${threeDigits(value)} kg`;
}
function sayMinutes(value_s) {
  return value_s < 90 ? `${Math.round(value_s)} s` : `${threeDigits(value_s / 60)} min`;
}
function sayPlain(value) {
  return threeDigits(value);
}
function threeDigits(value) {
  if (!Number.isFinite(value)) return value > 0 ? "no limit" : "nothing";
  if (value === 0) return "0";
  const digits = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value))));
  const rounded = digits === 0 ? roundTo(value) : Number(value.toFixed(Math.min(digits, 3)));
  return grouped(rounded);
}
function roundTo(value) {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.abs(value))) - 2);
  return Math.round(value / step) * step;
}
function grouped(value) {
  const [whole3 = "", part] = String(value).split(".");
  const set = whole3.replace(/\B(?=(\d{3})+(?!\d))/g, ",");
  return part === void 0 ? set : `${set}.${part}`;
}

// lib/rules/reach.ts
var PRACTICE = "common practice, no source";
var ARMS_LENGTH_M = 0.7;
var COUPLING_PIECE_M = 0.12;
var HANGING_KG = 12;
function stack(facts) {
  const lengths = facts.extensions.reduce((sum, extension) => sum + extension.facts.length.low, 0);
  return facts.core.head.facts.height + lengths + facts.adapter.facts.height;
}
var extendedBy = (facts, end) => facts.extensions.reduce((sum, extension) => sum + extension.facts.length[end], 0);
var reachNeeded = ({ line }) => (line.place.reach?.high ?? 0) - ARMS_LENGTH_M;
var gripOf2 = (change = {}) => ({
  ...lineFacts(),
  core: sampleCore(),
  extensions: [],
  adapter: sampleWheelAdapter(),
  ...change
});
var linkOf = (change = {}) => ({
  ...lineFacts(),
  extensions: [],
  adapter: sampleWheelAdapter(),
  ...change
});
var REACH_RULES = [
  {
    id: "reach-long-enough",
    topic: "reach and room",
    title: "Extensions bridge what an arm does not reach",
    scope: "link",
    severity: "refusal",
    source: PRACTICE,
    speaksOf: ["reach", "extension"],
    speaks: (facts) => facts.duty.grip.depthToNut === void 0 && extendedBy(facts, "high") < reachNeeded(facts) - 1e-9,
    sentence: (facts) => `${facts.line.tag} is ${sayLength(facts.line.place.reach?.high ?? 0)} away from where one can stand; extensions of ${sayLength(reachNeeded(facts))} are needed and these give ${sayLength(extendedBy(facts, "high"))}.`,
    examples: () => {
      const far = lineFacts({ place: { reach: stated("m", 1.1) } });
      return [
        { name: "far without extension", facts: linkOf(far), speaks: true },
        { name: "far with extension", facts: linkOf({ ...far, extensions: [sampleShaft()] }), speaks: false },
        { name: "near", facts: linkOf(), speaks: false }
      ];
    }
  },
  {
    id: "adapter-takes-extension",
    topic: "reach and room",
    title: "Only some adapters are steady at the end of an extension",
    scope: "link",
    severity: "refusal",
    source: PRACTICE,
    speaksOf: ["adapter", "extension"],
    speaks: (facts) => !facts.adapter.facts.takesExtension && extendedBy(facts, "high") > COUPLING_PIECE_M,
    sentence: (facts) => `${facts.adapter.name} ${facts.adapter.number} is not made to be driven through an extension (${facts.extensions.map((extension) => extension.number).join(", ")}, ${sayLength(extendedBy(facts, "high"))}).`,
    examples: () => {
      const plate2 = sampleWheelAdapter({ facts: { takesExtension: false } });
      const piece = sampleShaft({ facts: { length: { low: metres(0.06), high: metres(0.06) } } });
      return [
        { name: "plate on a shaft", facts: linkOf({ adapter: plate2, extensions: [sampleShaft()] }), speaks: true },
        { name: "plate on a coupling piece", facts: linkOf({ adapter: plate2, extensions: [piece] }), speaks: false },
        { name: "made for it", facts: linkOf({ extensions: [sampleShaft()] }), speaks: false }
      ];
    }
  },
  {
    id: "head-has-room",
    topic: "reach and room",
    title: "Head and drive swing free",
    scope: "part",
    severity: "refusal",
    source: PRACTICE,
    speaksOf: ["clear_radius", "head"],
    speaks: ({ part, place }) => part.role === "head" && part.facts.swingRadius > place.clearRadius_m,
    sentence: ({ part, place, line }) => `${line.tag} leaves ${sayLength(place.clearRadius_m)} around it; ${part.name} ${part.number} swings ${sayLength(part.role === "head" ? part.facts.swingRadius : 0)}.`,
    examples: () => [
      {
        name: "tight",
        facts: { ...lineFacts({ place: { clearRadius: stated("m", 0.2) } }), part: sampleHead() },
        speaks: true
      },
      { name: "not given", facts: { ...lineFacts(), part: sampleHead() }, speaks: false }
    ]
  },
  {
    id: "arm-has-room",
    topic: "reach and room",
    title: "The reaction arm has room at its shortest",
    scope: "part",
    severity: "refusal",
    source: PRACTICE,
    speaksOf: ["clear_radius", "restraint"],
    speaks: ({ part, place }) => part.role === "restraint" && part.facts.arm.low > place.clearRadius_m,
    sentence: ({ part, place, line }) => `${line.tag} leaves ${sayLength(place.clearRadius_m)} around it; ${part.name} ${part.number} needs ${sayLength(part.role === "restraint" ? part.facts.arm.low : 0)}.`,
    examples: () => [
      {
        name: "tight",
        facts: { ...lineFacts({ place: { clearRadius: stated("m", 0.3) } }), part: sampleRestraint() },
        speaks: true
      },
      {
        name: "enough",
        facts: { ...lineFacts({ place: { clearRadius: stated("m", 1) } }), part: sampleRestraint() },
        speaks: false
      }
    ]
  },
  {
    id: "headroom",
    topic: "reach and room",
    title: "Head, extensions and adapter fit under what is above",
    scope: "grip",
    severity: "refusal",
    source: PRACTICE,
    speaksOf: ["headroom", "head", "adapter", "extension"],
    speaks: (facts) => facts.place.faces === "up" && stack(facts) > facts.place.headroom_m,
    sentence: (facts) => `${facts.line.tag} has ${sayLength(facts.place.headroom_m)} above it; ${facts.core.head.number} with ${facts.adapter.number} stands ${sayLength(stack(facts))} high.`,
    examples: () => [
      { name: "low ceiling", facts: gripOf2(lineFacts({ place: { headroom: stated("m", 0.25) } })), speaks: true },
      { name: "enough", facts: gripOf2(lineFacts({ place: { headroom: stated("m", 0.5) } })), speaks: false }
    ]
  },
  {
    id: "adapter-holds-sideways",
    topic: "reach and room",
    title: "A wheel that faces sideways or down needs an adapter that holds on",
    scope: "part",
    severity: "refusal",
    source: PRACTICE,
    speaksOf: ["faces", "adapter"],
    speaks: ({ part, place }) => part.role === "adapter" && place.faces !== "up" && !part.facts.holdsSideways,
    sentence: ({ part, place, line }) => `${line.tag} faces ${place.faces}; ${part.name} ${part.number} would come off.`,
    examples: () => {
      const loose = sampleWheelAdapter({ facts: { holdsSideways: false } });
      return [
        { name: "sideways", facts: { ...lineFacts({ place: { faces: said("side") } }), part: loose }, speaks: true },
        { name: "upwards", facts: { ...lineFacts(), part: loose }, speaks: false }
      ];
    }
  },
  {
    id: "weight-held-up",
    topic: "reach and room",
    title: "The drive is held up where it would hang from the wheel",
    scope: "core",
    severity: "warning",
    source: PRACTICE,
    speaksOf: ["faces", "drive", "head"],
    speaks: ({ place, core }) => place.faces !== "up" && core.drive.mass + core.head.mass > HANGING_KG,
    sentence: ({ line, place, core }) => `${line.tag} faces ${place.faces}: hang ${core.drive.number} with ${core.head.number} (${sayMass(core.drive.mass + core.head.mass)}) from a sling or balancer; the stem must not carry it.`,
    examples: () => {
      const heavy = sampleCore({ drive: sampleDrive({ mass_kg: 14 }) });
      return [
        { name: "hanging", facts: { ...lineFacts({ place: { faces: said("side") } }), core: heavy }, speaks: true },
        { name: "standing", facts: { ...lineFacts(), core: heavy }, speaks: false }
      ];
    }
  },
  {
    id: "extension-speed",
    topic: "reach and room",
    title: "A long shaft is not run up to where it whips",
    scope: "grip",
    severity: "refusal",
    source: "Whirling of shafts: engineering handbooks; the limit is the part\u2019s own.",
    speaksOf: ["extension", "drive"],
    speaks: (facts) => facts.extensions.some(
      (extension) => Math.max(facts.core.figures.opening.fastest, facts.core.figures.closing.fastest) > extension.facts.maxSpeed
    ),
    sentence: (facts) => `${facts.core.drive.number} would turn at ${sayPlain(Math.max(facts.core.figures.opening.fastest, facts.core.figures.closing.fastest))} 1/min, faster than ${facts.extensions.map((extension) => `${extension.number} allows (${sayPlain(extension.facts.maxSpeed)})`).join(" or ")}.`,
    examples: () => [
      {
        name: "slow shaft",
        facts: gripOf2({ extensions: [sampleShaft({ facts: { maxSpeed: perMinute(10) } })] }),
        speaks: true
      },
      { name: "fast enough", facts: gripOf2({ extensions: [sampleShaft()] }), speaks: false }
    ]
  },
  {
    id: "reach-not-sure",
    topic: "reach and room",
    title: "A reach that is only guessed is measured first",
    scope: "line",
    severity: "warning",
    source: PRACTICE,
    speaksOf: ["reach"],
    speaks: ({ line }) => line.place.reach?.basis === "assumed" || line.place.reach?.basis === "rule of thumb",
    sentence: ({ line }) => `${line.tag}: the reach of up to ${sayLength(line.place.reach?.high ?? 0)} is a guess; measure it.`,
    examples: () => [
      { name: "guessed", facts: lineFacts({ place: { reach: ranged("m", 0.5, 1.5) } }), speaks: true },
      { name: "key in the street", facts: lineFacts({ duty: { grip: SAMPLE_NUT } }), speaks: false }
    ]
  }
];

// lib/rules/buried.ts
var PRACTICE2 = "common practice, no source";
var WORKING_HEIGHT_M = { low: 0.1, high: 1.3 };
var SHALLOW_M = 0.3;
var STRAIGHT_UP_TO_DEG = 5;
var GUIDED_FROM_M = 2;
function chainLength(facts) {
  const { length, height } = facts.adapter.facts;
  return {
    low: extendedBy(facts, "low") + (length?.low ?? height),
    high: extendedBy(facts, "high") + (length?.high ?? height)
  };
}
var isDeep = (facts) => facts.gripCase.kind === "nut" && facts.gripCase.depth_m > SHALLOW_M;
var atDepth = (depth_m, key = sampleKey()) => ({
  ...lineFacts({ duty: { grip: SAMPLE_NUT, movement: "keyed" } }),
  adapter: key,
  extensions: [],
  gripCase: { kind: "nut", shape: "square", acrossFlats_m: 0.029, depth_m }
});
var misaligned = (angle) => lineFacts({ duty: { grip: SAMPLE_NUT }, place: { misalignment: stated("\xB0", angle) } });
var BURIED_RULES = [
  {
    id: "key-long-enough",
    topic: "buried",
    title: "Key and extensions reach from the nut to working height",
    scope: "case",
    severity: "refusal",
    source: PRACTICE2,
    speaksOf: ["depth_to_nut", "adapter", "extension"],
    speaks: (facts) => facts.gripCase.kind === "nut" && isDeep(facts) && chainLength(facts).high < facts.gripCase.depth_m + WORKING_HEIGHT_M.low,
    sentence: (facts) => {
      const depth = facts.gripCase.kind === "nut" ? facts.gripCase.depth_m : 0;
      return `${facts.line.tag}: the nut lies ${sayLength(depth)} deep; ${facts.adapter.name} ${facts.adapter.number} with its extensions reaches ${sayLength(chainLength(facts).high)}, and ${sayLength(depth + WORKING_HEIGHT_M.low)} is needed.`;
    },
    examples: () => [
      { name: "reaches", facts: atDepth(1.2), speaks: false },
      { name: "too deep", facts: atDepth(2.6), speaks: true },
      {
        name: "too deep, with a shaft",
        facts: {
          ...atDepth(2.6),
          extensions: [sampleShaft({ facts: { length: { low: metres(0.6), high: metres(0.6) } } })]
        },
        speaks: false
      },
      {
        name: "socket on a nut in the open",
        facts: atDepth(0, sampleKey({ facts: { kind: "drive socket" } })),
        speaks: false
      }
    ]
  },
  {
    id: "key-not-too-long",
    topic: "buried",
    title: "The head does not stand higher than a person can watch",
    scope: "case",
    severity: "refusal",
    source: PRACTICE2,
    speaksOf: ["depth_to_nut", "adapter", "extension"],
    speaks: (facts) => facts.gripCase.kind === "nut" && chainLength(facts).low > facts.gripCase.depth_m + WORKING_HEIGHT_M.high,
    sentence: (facts) => {
      const depth = facts.gripCase.kind === "nut" ? facts.gripCase.depth_m : 0;
      return `${facts.line.tag}: the nut lies ${sayLength(depth)} deep; ${facts.adapter.name} ${facts.adapter.number} is ${sayLength(chainLength(facts).low)} at its shortest and would hold the head ${sayLength(chainLength(facts).low - depth)} above the surface.`;
    },
    examples: () => [
      { name: "short enough", facts: atDepth(1.2), speaks: false },
      {
        name: "long key on a shallow nut",
        facts: atDepth(0.2, sampleKey({ facts: { length: { low: metres(1.9), high: metres(3) } } })),
        speaks: true
      }
    ]
  },
  {
    id: "key-guided-when-long",
    topic: "buried",
    title: "A long key is guided in the surface box",
    scope: "whole",
    severity: "warning",
    source: PRACTICE2,
    speaksOf: ["depth_to_nut", "adapter"],
    speaks: ({ duty, links }) => links.some(({ adapter }) => adapter.facts.kind === "valve key") && (duty.grip.depthToNut?.high ?? 0) + WORKING_HEIGHT_M.low > GUIDED_FROM_M,
    sentence: ({ line, duty }) => `${line.tag}: the key is over ${sayLength(GUIDED_FROM_M)} long (nut ${sayLength(duty.grip.depthToNut?.high ?? 0)} deep): guide it in the surface box, turn slowly, and stand clear of the key, which stores wind-up.`,
    examples: () => {
      const facts = (depth) => ({
        ...lineFacts({ duty: { grip: { ...SAMPLE_NUT, depthToNut: stated("m", depth) } } }),
        core: sampleCore(),
        links: [{ adapter: sampleKey(), extensions: [] }],
        restraint: sampleRestraint(),
        secondChain: null,
        reaction: {
          arm_m: 0.8,
          force: sampleRestraint().facts.forceRating,
          sideLoad: sampleRestraint().facts.forceRating
        }
      });
      return [
        { name: "deep", facts: facts(2.4), speaks: true },
        { name: "shallow", facts: facts(1), speaks: false }
      ];
    }
  },
  {
    id: "joint-where-out-of-line",
    topic: "buried",
    title: "A universal joint where the chain cannot stand straight",
    scope: "link",
    severity: "refusal",
    source: PRACTICE2,
    speaksOf: ["misalignment", "extension"],
    speaks: ({ line, extensions }) => (line.place.misalignment?.high ?? 0) > STRAIGHT_UP_TO_DEG && !extensions.some((extension) => extension.facts.kind === "universal joint"),
    sentence: ({ line }) => `${line.tag} stands ${sayPlain(line.place.misalignment?.high ?? 0)}\xB0 out of line: a universal joint is needed above ${STRAIGHT_UP_TO_DEG}\xB0.`,
    examples: () => {
      const key = atDepth(1.2);
      return [
        { name: "out of line without joint", facts: { ...key, ...misaligned(12) }, speaks: true },
        { name: "with joint", facts: { ...key, ...misaligned(12), extensions: [sampleJoint()] }, speaks: false },
        { name: "straight", facts: { ...key, ...misaligned(2) }, speaks: false }
      ];
    }
  },
  {
    id: "joint-angle-within-limit",
    topic: "buried",
    title: "A universal joint works within its angle",
    scope: "part",
    severity: "refusal",
    source: PRACTICE2,
    speaksOf: ["misalignment", "extension"],
    speaks: ({ part, line }) => part.role === "extension" && part.facts.kind === "universal joint" && (line.place.misalignment?.high ?? 0) > (part.facts.highestAngle ?? 0),
    sentence: ({ part, line }) => `${line.tag} stands ${sayPlain(line.place.misalignment?.high ?? 0)}\xB0 out of line; ${part.name} ${part.number} works up to ${sayPlain(part.role === "extension" ? part.facts.highestAngle ?? 0 : 0)}\xB0.`,
    examples: () => [
      { name: "within", facts: { ...misaligned(12), part: sampleJoint() }, speaks: false },
      {
        name: "beyond",
        facts: { ...misaligned(12), part: sampleJoint({ facts: { highestAngle: degrees(10) } }) },
        speaks: true
      }
    ]
  },
  {
    id: "joint-only-where-needed",
    topic: "buried",
    title: "No universal joint in a chain that stands straight",
    scope: "part",
    severity: "refusal",
    source: PRACTICE2,
    speaksOf: ["misalignment", "extension"],
    speaks: ({ part, line }) => part.role === "extension" && part.facts.kind === "universal joint" && (line.place.misalignment?.high ?? 0) <= STRAIGHT_UP_TO_DEG,
    sentence: ({ part, line }) => `${line.tag} is not said to stand out of line: ${part.name} ${part.number} would only add speed ripple and a joint that can whip.`,
    examples: () => [
      { name: "straight", facts: { ...misaligned(0), part: sampleJoint() }, speaks: true },
      { name: "out of line", facts: { ...misaligned(12), part: sampleJoint() }, speaks: false }
    ]
  },
  {
    id: "surface-box-state",
    topic: "buried",
    title: "The surface box can be found, opened and emptied",
    scope: "line",
    severity: "warning",
    source: PRACTICE2,
    speaksOf: ["surface_box"],
    speaks: ({ line }) => /jam|stuck|flood|full|cover|missing|not (found|visible)|sand|paved|tarmac|seized/i.test(
      line.place.surfaceBox?.value ?? ""
    ),
    sentence: ({ line }) => `${line.tag}: the surface box is \u201C${line.place.surfaceBox?.value}\u201D: find, open and clear it before the visit, or the visit is lost.`,
    examples: () => [
      { name: "full of sand", facts: lineFacts({ place: { surfaceBox: said("full of sand") } }), speaks: true },
      { name: "good", facts: lineFacts({ place: { surfaceBox: said("good") } }), speaks: false }
    ]
  },
  {
    id: "depth-not-known",
    topic: "buried",
    title: "The depth to the nut is asked",
    scope: "line",
    severity: "warning",
    source: PRACTICE2,
    speaksOf: ["depth_to_nut"],
    speaks: ({ duty }) => duty.grip.kind === "nut" && ["assumed", "rule of thumb"].includes(duty.grip.depthToNut?.basis ?? "stated"),
    sentence: ({ line, duty }) => `${line.tag}: the depth to the nut is a guess (${sayLength(duty.grip.depthToNut?.low ?? 0)} to ${sayLength(duty.grip.depthToNut?.high ?? 0)}); the key covers it. Measure it with a rod.`,
    examples: () => [
      {
        name: "assumed",
        facts: lineFacts({ duty: { grip: { ...SAMPLE_NUT, depthToNut: ranged("m", 0.6, 1.5) } } }),
        speaks: true
      },
      { name: "stated", facts: lineFacts({ duty: { grip: SAMPLE_NUT } }), speaks: false }
    ]
  }
];

// lib/kits/reactions.ts
function fitsPart(accessory, number) {
  return accessory.facts.fits.length === 0 || accessory.facts.fits.includes(number);
}
function reactionsOf({
  restraints,
  stock,
  facts
}) {
  const chains = stock.accessories.filter((accessory) => accessory.facts.kind === "second chain");
  return restraints.map((restraint) => {
    const wanted = needsSecondChain({ directions: restraint.facts.directions, strokes: facts.duty.strokes });
    const chain = wanted ? chains.find((accessory) => fitsPart(accessory, restraint.number)) : void 0;
    return { restraint, secondChain: chain ?? null };
  });
}
function reactionFigures({
  core,
  restraint
}) {
  const force = reactionForceAt({ restraint, torque: core.figures.highestAtValve });
  return {
    arm_m: restraint.facts.arm.low,
    force,
    sideLoad: sideLoad({ force, anchoring: restraint.facts.sideLoad })
  };
}
function reactionForceAt({
  restraint,
  torque: torque2
}) {
  const arm_m = restraint.facts.arm.low;
  const single = restraint.facts.sideLoad === "single anchor";
  const pull = reactionForce({
    torque: torque2,
    arm: metres(single ? arm_m : 2 * arm_m),
    pullAngle: WORKING_CONSTANTS.pullAngle
  });
  return newtons(forceWithShock({ force: pull, shock: WORKING_CONSTANTS.shock }));
}

// lib/kits/torque-cap.ts
function torqueCap(chain) {
  const parts = [chain.head, ...chain.links.flatMap(({ adapter, extensions }) => [adapter, ...extensions])];
  const weakest2 = Math.min(...parts.map((part) => part.facts.torqueRating), restraintCap(chain.restraint));
  const { ratio: ratio2, efficiency } = chain.head.facts;
  const stall = Math.max(...chain.drive.facts.gears.map((gear) => gear.stallTorque)) * ratio2 * efficiency.high;
  return newtonMetres(weakest2 < stall ? weakest2 : Number.POSITIVE_INFINITY);
}
function restraintCap({ facts }) {
  const arms = facts.sideLoad === "single anchor" ? 1 : 2;
  const square3 = Math.sin(WORKING_CONSTANTS.pullAngle * Math.PI / 180);
  return facts.forceRating * arms * facts.arm.low * square3 / WORKING_CONSTANTS.shock;
}

// lib/kits/narrow-views.ts
var LINK_OF_EXTENSIONS = /* @__PURE__ */ new Set(["joint-where-out-of-line", "reach-long-enough"]);
var CASE_OF_ADAPTER = /* @__PURE__ */ new Set([
  "wheel-diameter-within-adapter",
  "wheel-spokes-within-adapter",
  "wheel-dish-within-adapter",
  "nut-socket-fits"
]);
var CORE_OF_MESH = /* @__PURE__ */ new Set([
  "drive-runs-at-torque",
  "input-speed",
  "stroke-time",
  "head-input-speed",
  "air-pressure-at-tool",
  "zone-no-pack-change"
]);
var CORE_WITHOUT_COUNTER = /* @__PURE__ */ new Set([
  ...CORE_OF_MESH,
  "drive-reaches-torque",
  "limiter-required",
  "limiter-low-enough",
  "limiter-reaches-torque",
  "limiter-both-ways",
  "head-carries-torque"
]);
var GRIP_OF_HEAD = /* @__PURE__ */ new Set(["stem-clears-head", "headroom"]);
var REACTION_OF_HEAD = /* @__PURE__ */ new Set(["restraint-fits-head", "restraint-both-ways"]);
var SLACK = 1e-9;
var weakest = (extensions) => extensions.reduce((least, { facts }) => Math.min(least, facts.torqueRating + SLACK), Number.POSITIVE_INFINITY);
var GRIP_TORQUE_LIMITS = /* @__PURE__ */ new Map([
  ["adapter-carries-torque", ({ adapter }) => adapter.facts.torqueRating + SLACK],
  ["extension-carries-torque", ({ extensions }) => weakest(extensions)]
]);
var GRIP_SPEED_LIMITS = /* @__PURE__ */ new Map([
  [
    "extension-speed",
    ({ extensions }) => extensions.reduce((least, { facts }) => Math.min(least, facts.maxSpeed), Number.POSITIVE_INFINITY)
  ]
]);
var REACTION_STALL_LIMITS = /* @__PURE__ */ new Map([
  ["restraint-covers-stall", ({ facts }) => facts.torqueRating + SLACK]
]);
var REACTION_TORQUE_LIMITS = /* @__PURE__ */ new Map([
  ["restraint-force-within-rating", torqueAtForceRating]
]);
function torqueAtForceRating(restraint) {
  const holds2 = (torque2) => !(reactionForceAt({ restraint, torque: newtonMetres(torque2) }) > restraint.facts.forceRating + SLACK);
  const near = restraintCap(restraint);
  let good = near * (1 - 1e-9);
  let bad = near * (1 + 1e-9) + SLACK;
  while (!holds2(good)) good /= 2;
  while (holds2(bad)) bad *= 2;
  for (let middle = (good + bad) / 2; middle > good && middle < bad; middle = (good + bad) / 2) {
    if (holds2(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

// lib/rules/counting.ts
var PRACTICE3 = "common practice, no source";
var COUNTING_RULES = [
  {
    id: "counter-required",
    topic: "counting",
    title: "Long strokes and stops that must not be hit need a turns counter",
    scope: "core",
    severity: "refusal",
    source: PRACTICE3,
    speaksOf: ["turns", "end_stops", "option"],
    speaks: ({ duty, core }) => duty.countTurns && core.counter === null,
    sentence: ({ line, duty }) => `${line.tag} takes ${sayPlain(duty.turns.nominal)} turns or has an end that must not be hit under power: a turns counter is required.`,
    examples: () => [
      {
        name: "required and missing",
        facts: { ...lineFacts({ duty: { countTurns: true } }), core: sampleCore() },
        speaks: true
      },
      {
        name: "required and there",
        facts: { ...lineFacts({ duty: { countTurns: true } }), core: sampleCore({ counter: sampleCounter() }) },
        speaks: false
      },
      { name: "not required", facts: { ...lineFacts(), core: sampleCore() }, speaks: false }
    ]
  },
  {
    id: "counter-counts-far-enough",
    topic: "counting",
    title: "The counter counts as far as the stroke goes",
    scope: "part",
    severity: "refusal",
    source: "The part\u2019s own rating",
    speaksOf: ["turns", "option"],
    speaks: ({ part, duty }) => part.role === "option" && part.facts.kind === "turns counter" && (part.facts.highestTurns ?? Number.POSITIVE_INFINITY) < duty.turns.high,
    sentence: ({ part, line, duty }) => `${line.tag} may take ${sayPlain(duty.turns.high)} turns; ${part.name} ${part.number} counts to ${sayPlain(part.role === "option" ? part.facts.highestTurns ?? 0 : 0)}.`,
    examples: () => [
      {
        name: "too short",
        facts: { ...lineFacts({ duty: { turns: stated("turn", 1200) } }), part: sampleCounter() },
        speaks: true
      },
      { name: "far enough", facts: { ...lineFacts(), part: sampleCounter() }, speaks: false }
    ]
  },
  {
    id: "turns-not-known",
    topic: "counting",
    title: "Turns that are only a guess are counted by hand first",
    scope: "line",
    severity: "note",
    source: PRACTICE3,
    speaksOf: ["turns"],
    speaks: ({ duty }) => ["rule of thumb", "assumed"].includes(duty.turns.basis),
    sentence: ({ line, duty }) => `${line.tag}: turns are a guess, ${sayPlain(duty.turns.low)} to ${sayPlain(duty.turns.high)}; expect the end anywhere in between.`,
    examples: () => [
      {
        name: "rule of thumb",
        facts: lineFacts({ duty: { turns: { ...stated("turn", 40), basis: "rule of thumb" } } }),
        speaks: true
      },
      { name: "stated", facts: lineFacts(), speaks: false }
    ]
  }
];

// lib/rules/couplings.ts
function outputOf(part) {
  if (part.role === "drive" || part.role === "head" || part.role === "extension") return part.facts.output;
  return part.role === "option" ? part.facts.output ?? null : null;
}
function inputOf(part) {
  if (part.role === "head" || part.role === "extension" || part.role === "adapter") return part.facts.input;
  return part.role === "option" ? part.facts.input ?? null : null;
}
function fits(upstream, downstream) {
  const output = outputOf(upstream);
  const input = inputOf(downstream);
  return output !== null && input !== null && joins(output, input);
}
var tell = (coupling) => coupling === null ? "no coupling" : `${coupling.form} ${coupling.size} ${coupling.gender}`;
var COUPLING_RULES = [
  {
    id: "couplings-join",
    topic: "couplings",
    title: "Couplings join where form and size match",
    scope: "pair",
    severity: "refusal",
    source: "ISO 1174 squares; splines and faces of the house",
    speaksOf: ["drive", "head", "option", "extension", "adapter"],
    speaks: ({ upstream, downstream }) => !fits(upstream, downstream),
    sentence: ({ upstream, downstream }) => `${upstream.number} turns ${tell(outputOf(upstream))}; ${downstream.number} takes ${tell(inputOf(downstream))}: they do not join.`,
    examples: () => [
      {
        name: "drive and head",
        facts: { ...lineFacts(), upstream: sampleDrive(), downstream: sampleHead() },
        speaks: false
      },
      {
        name: "head and key",
        facts: { ...lineFacts(), upstream: sampleHead(), downstream: sampleKey() },
        speaks: false
      },
      {
        name: "drive and key",
        facts: { ...lineFacts(), upstream: sampleDrive(), downstream: sampleKey() },
        speaks: true
      }
    ]
  }
];

// lib/rules/house.ts
var SOURCE = "house rule";
var first = (facts, kind, breaks) => facts.site.houseRules.find((rule) => rule.kind === kind && breaks(rule.value.trim().toLowerCase()));
var siteWith = (kind, value) => ({
  houseRules: [{ id: "sample", kind, value, sentence: `Sample house rule: ${kind} ${value}.` }]
});
var PIPEWORK = ["large pipe", "flange"];
function restraintTo(facts, needs) {
  return first(facts, "no-restraint-to", (value) => {
    const banned = value === "pipework" || value === "pipe" ? PIPEWORK : [value];
    const wanted = needs.filter((need) => !banned.includes(need));
    return needs.length > 0 && (wanted.length === 0 || banned.includes(facts.place.anchor) && needs.includes(facts.place.anchor));
  });
}
var HOUSE_RULES = [
  {
    id: "house-no-source",
    topic: "house",
    title: "The house keeps a power source out",
    scope: "part",
    severity: "refusal",
    source: SOURCE,
    speaksOf: ["house_rules", "drive"],
    speaks: (facts) => {
      const { part } = facts;
      return part.role === "drive" && first(facts, "no-source", (value) => value === part.facts.power.kind) !== void 0;
    },
    sentence: (facts) => {
      const { part } = facts;
      const rule = part.role === "drive" ? first(facts, "no-source", (value) => value === part.facts.power.kind) : void 0;
      return `${rule?.sentence ?? ""} ${part.name} ${part.number} is left out.`;
    },
    examples: () => [
      {
        name: "no battery",
        facts: { ...lineFacts({ site: siteWith("no-source", "battery") }), part: sampleDrive() },
        speaks: true
      },
      {
        name: "no petrol",
        facts: { ...lineFacts({ site: siteWith("no-source", "petrol") }), part: sampleDrive() },
        speaks: false
      }
    ]
  },
  {
    id: "house-no-restraint-kind",
    topic: "house",
    title: "The house keeps a kind of restraint out",
    scope: "part",
    severity: "refusal",
    source: SOURCE,
    speaksOf: ["house_rules", "restraint"],
    speaks: (facts) => {
      const { part } = facts;
      return part.role === "restraint" && first(facts, "no-restraint-kind", (value) => value === part.facts.kind) !== void 0;
    },
    sentence: (facts) => {
      const { part } = facts;
      const rule = part.role === "restraint" ? first(facts, "no-restraint-kind", (value) => value === part.facts.kind) : void 0;
      return `${rule?.sentence ?? ""} ${part.name} ${part.number} is left out.`;
    },
    examples: () => [
      {
        name: "kept out",
        facts: { ...lineFacts({ site: siteWith("no-restraint-kind", "twin-point arm") }), part: sampleRestraint() },
        speaks: true
      },
      {
        name: "another kind",
        facts: { ...lineFacts({ site: siteWith("no-restraint-kind", "ground plate") }), part: sampleRestraint() },
        speaks: false
      }
    ]
  },
  {
    id: "house-no-restraint-to",
    topic: "house",
    title: "The house keeps restraints off an anchor",
    scope: "part",
    severity: "refusal",
    source: SOURCE,
    speaksOf: ["house_rules", "anchor", "restraint"],
    speaks: (facts) => facts.part.role === "restraint" && restraintTo(facts, facts.part.facts.needs) !== void 0,
    sentence: (facts) => {
      const rule = facts.part.role === "restraint" ? restraintTo(facts, facts.part.facts.needs) : void 0;
      return `${rule?.sentence ?? ""} ${facts.part.name} ${facts.part.number} would be anchored there.`;
    },
    examples: () => {
      const onPipe = sampleRestraint({ facts: { needs: ["structure", "large pipe"] } });
      return [
        {
          name: "only pipe there",
          facts: {
            ...lineFacts({ site: siteWith("no-restraint-to", "pipework"), place: { anchor: said("large pipe") } }),
            part: onPipe
          },
          speaks: true
        },
        {
          name: "structure there",
          facts: { ...lineFacts({ site: siteWith("no-restraint-to", "pipework") }), part: onPipe },
          speaks: false
        }
      ];
    }
  },
  {
    id: "house-max-lift",
    topic: "house",
    title: "The house limits the mass of a piece",
    scope: "part",
    severity: "refusal",
    source: SOURCE,
    speaksOf: ["house_rules"],
    speaks: (facts) => first(facts, "max-lift", (value) => facts.part.mass > Number.parseFloat(value)) !== void 0,
    sentence: (facts) => `${first(facts, "max-lift", (value) => facts.part.mass > Number.parseFloat(value))?.sentence ?? ""} ${facts.part.name} ${facts.part.number} has ${facts.part.mass} kg.`,
    examples: () => [
      {
        name: "too heavy",
        facts: { ...lineFacts({ site: siteWith("max-lift", "25 kg") }), part: sampleHead({ mass_kg: 30 }) },
        speaks: true
      },
      {
        name: "light",
        facts: { ...lineFacts({ site: siteWith("max-lift", "25 kg") }), part: sampleHead() },
        speaks: false
      }
    ]
  },
  {
    id: "house-persons-at-every-valve",
    topic: "house",
    title: "The house asks for persons at every valve",
    scope: "line",
    severity: "refusal",
    source: SOURCE,
    speaksOf: ["house_rules", "persons_per_crew"],
    speaks: (facts) => first(facts, "persons-at-every-valve", (value) => facts.site.personsPerCrew < Number.parseFloat(value)) !== void 0,
    sentence: (facts) => `${first(facts, "persons-at-every-valve", (value) => facts.site.personsPerCrew < Number.parseFloat(value))?.sentence ?? ""} The crews have ${facts.site.personsPerCrew}.`,
    examples: () => [
      { name: "three asked", facts: lineFacts({ site: siteWith("persons-at-every-valve", "3") }), speaks: true },
      { name: "two asked", facts: lineFacts({ site: siteWith("persons-at-every-valve", "2") }), speaks: false }
    ]
  }
];

// lib/rules/method.ts
var PRACTICE4 = "common practice, no source";
var type = ({ line }) => line.valveType?.value ?? "unknown";
var QUARTER_TURN = ["butterfly", "ball", "plug"];
var isPositionSeated = (facts) => QUARTER_TURN.includes(type(facts)) || facts.line.torque.gearbox?.value === "worm" || type(facts) === "parallel slide gate";
var hasBackSeat = (facts) => /gate|globe/.test(type(facts)) && facts.duty.movement === "screw";
var METHOD_RULES = [
  {
    id: "count-from-closed",
    topic: "method",
    title: "Turns are counted from the closed end",
    scope: "line",
    severity: "note",
    source: PRACTICE4,
    speaksOf: ["turns", "position"],
    speaks: ({ duty }) => duty.turns.high > 1,
    sentence: ({ line }) => `${line.tag}: count turns from the closed end and write them down each way.`,
    examples: () => [
      { name: "many turns", facts: lineFacts(), speaks: true },
      { name: "a quarter turn", facts: lineFacts({ duty: { turns: stated("turn", 0.25) } }), speaks: false }
    ]
  },
  {
    id: "stop-short-of-ends",
    topic: "method",
    title: "Power stops short of both ends; the last turns are by hand",
    scope: "line",
    severity: "warning",
    source: PRACTICE4,
    speaksOf: ["turns"],
    speaks: ({ duty }) => duty.grip.kind !== "none",
    sentence: ({ line }) => `${line.tag}: stop the drive short of both ends and do the last turns by hand.`,
    examples: () => [
      { name: "any valve", facts: lineFacts(), speaks: true },
      {
        name: "nothing to turn",
        facts: lineFacts({ duty: { grip: { kind: "none", wheelRises: "no", stemRisesThroughWheel: "no" } } }),
        speaks: false
      }
    ]
  },
  {
    id: "never-back-seat",
    topic: "method",
    title: "Never back-seat under power",
    scope: "line",
    severity: "warning",
    source: PRACTICE4,
    speaksOf: ["valve_type"],
    speaks: hasBackSeat,
    sentence: ({ line }) => `${line.tag}: do not drive it against its back seat; open to the end by hand and turn back a little.`,
    examples: () => [
      { name: "gate", facts: lineFacts({ line: { valveType: said("gate") } }), speaks: true },
      { name: "ball", facts: lineFacts({ line: { valveType: said("ball") } }), speaks: false }
    ]
  },
  {
    id: "position-seated",
    topic: "method",
    title: "Position-seated valves and gearbox stops are not torqued",
    scope: "line",
    severity: "warning",
    source: PRACTICE4,
    speaksOf: ["valve_type", "gearbox"],
    speaks: isPositionSeated,
    sentence: ({ line }) => `${line.tag} closes by position: stop at the mark or stop and do not torque it; the stop of a gearbox is not a seat.`,
    examples: () => [
      { name: "butterfly", facts: lineFacts({ line: { valveType: said("butterfly") } }), speaks: true },
      { name: "wedge gate", facts: lineFacts({ line: { valveType: said("wedge gate") } }), speaks: false }
    ]
  },
  {
    id: "by-pass-first",
    topic: "method",
    title: "By-pass first",
    scope: "line",
    severity: "note",
    source: PRACTICE4,
    speaksOf: ["bypass"],
    speaks: ({ line }) => line.state.bypass?.value === true,
    sentence: ({ line }) => `${line.tag} has a by-pass: equalise through it before the main valve is opened.`,
    examples: () => [
      { name: "by-pass", facts: lineFacts({ line: { state: { bypass: said(true) } } }), speaks: true },
      { name: "none", facts: lineFacts(), speaks: false }
    ]
  },
  {
    id: "to-and-fro",
    topic: "method",
    title: "A stiff valve is worked to and fro",
    scope: "line",
    severity: "note",
    source: PRACTICE4,
    speaksOf: ["condition", "last_operated"],
    speaks: ({ line, site }) => line.state.condition?.value === "stiff" || (yearsIdle({ line, site }) ?? 0) > WORKING_CONSTANTS.stiffAfterYears,
    sentence: ({ line }) => `${line.tag} is or may be stiff: a few turns on, half back, and again; the time planned allows for it. Do not force it.`,
    examples: () => [
      { name: "stiff", facts: lineFacts({ line: { state: { condition: said("stiff") } } }), speaks: true },
      { name: "not moved for years", facts: lineFacts({ line: { state: { lastOperated: said(12) } } }), speaks: true },
      { name: "last moved in 2019", facts: lineFacts({ line: { state: { lastOperated: said(2019) } } }), speaks: true },
      {
        name: "last moved in 2029",
        facts: lineFacts({ line: { state: { lastOperated: said(2029) } } }),
        speaks: false
      },
      { name: "free", facts: lineFacts({ line: { state: { condition: said("free") } } }), speaks: false }
    ]
  },
  {
    id: "try-by-hand",
    topic: "method",
    title: "Try by hand first, nobody in line with the stem",
    scope: "line",
    severity: "warning",
    source: PRACTICE4,
    speaksOf: [],
    speaks: ({ duty }) => duty.grip.kind !== "none" && !duty.seized,
    sentence: ({ line }) => `${line.tag}: try by hand first; nobody in line with the stem; start low, raise in steps; after a stall release slowly and reverse to relieve.`,
    examples: () => [
      { name: "any valve", facts: lineFacts(), speaks: true },
      { name: "seized", facts: lineFacts({ duty: { seized: true } }), speaks: false }
    ]
  },
  {
    id: "leave-as-agreed",
    topic: "method",
    title: "The valve is left where the customer wants it",
    scope: "line",
    severity: "note",
    source: PRACTICE4,
    speaksOf: ["leave_at", "normal_position"],
    speaks: ({ line }) => line.state.leaveAt !== void 0 || line.state.normalPosition !== void 0,
    sentence: ({ line }) => `${line.tag}: leave it ${line.state.leaveAt?.value ?? line.state.normalPosition?.value} and write down the position it was found in.`,
    examples: () => [
      { name: "said", facts: lineFacts({ line: { state: { normalPosition: said("open") } } }), speaks: true },
      { name: "not said", facts: lineFacts(), speaks: false }
    ]
  },
  {
    id: "reverse-action",
    topic: "method",
    title: "A reverse-acting valve closes when others open",
    scope: "line",
    severity: "warning",
    source: PRACTICE4,
    speaksOf: ["action"],
    speaks: ({ line }) => line.action?.value === "reverse",
    sentence: ({ line }) => `${line.tag} is reverse-acting: the stem going in opens it. Check twice before a direction is selected.`,
    examples: () => [
      { name: "reverse", facts: lineFacts({ line: { action: said("reverse") } }), speaks: true },
      { name: "direct", facts: lineFacts({ line: { action: said("direct") } }), speaks: false }
    ]
  }
];

// lib/rules/no-wheel.ts
var PRACTICE5 = "common practice, no source";
function socketFits(facts) {
  const { gripCase, adapter } = facts;
  if (gripCase.kind !== "nut") return true;
  return (adapter.facts.sockets ?? []).some((socket) => {
    const shapeFits = gripCase.shape === null || socket.shape === gripCase.shape;
    const across = gripCase.acrossFlats_m;
    const sizeFits = across === null || across <= socket.acrossFlats + 1e-6 && across >= socket.acrossFlats - socket.slack - 1e-6;
    return shapeFits && sizeFits;
  });
}
var nutLine = (change = {}) => lineFacts({ ...change, duty: { grip: SAMPLE_NUT, movement: "keyed", ...change.duty } });
var onNut = (acrossFlats_m, shape) => ({
  ...nutLine(),
  adapter: sampleKey(),
  extensions: [],
  gripCase: { kind: "nut", shape, acrossFlats_m, depth_m: 1.2 }
});
var drivenBy = (text, { line }) => line.interface.drivenBy?.value === text;
var NO_WHEEL_RULES = [
  {
    id: "nut-socket-fits",
    topic: "no wheel",
    title: "A socket of the nut\u2019s shape and size is there",
    scope: "case",
    severity: "refusal",
    source: PRACTICE5,
    speaksOf: ["nut_shape", "nut_size", "adapter"],
    speaks: (facts) => facts.adapter.facts.sockets !== void 0 && !socketFits(facts),
    sentence: (facts) => {
      if (facts.gripCase.kind !== "nut") return "";
      const { acrossFlats_m, shape } = facts.gripCase;
      const sockets = (facts.adapter.facts.sockets ?? []).map(
        (socket) => `${socket.shape} ${sayLength(socket.acrossFlats)}`
      );
      const size = acrossFlats_m === null ? "of unknown size" : `of ${sayLength(acrossFlats_m)}`;
      return `${facts.line.tag}: a ${shape ?? "nut"} ${size} across flats fits no socket of ${facts.adapter.name} ${facts.adapter.number} (${sockets.join(", ")}).`;
    },
    examples: () => [
      { name: "within slack", facts: onNut(0.028, "square"), speaks: false },
      { name: "too large", facts: onNut(0.032, "square"), speaks: true },
      { name: "too small", facts: onNut(0.025, "square"), speaks: true },
      { name: "another shape", facts: onNut(0.029, "pentagon"), speaks: true },
      { name: "unknown shape", facts: onNut(0.029, null), speaks: false }
    ]
  },
  {
    id: "nut-rounded-needs-retention",
    topic: "no wheel",
    title: "A rounded nut is not driven by a loose socket",
    scope: "part",
    severity: "refusal",
    source: PRACTICE5,
    speaksOf: ["nut_wear", "adapter"],
    speaks: ({ part, line }) => part.role === "adapter" && part.facts.kind === "drive socket" && part.facts.retention === "none" && line.interface.nutWear?.value === "rounded",
    sentence: ({ part, line }) => `${line.tag}: the nut is rounded and ${part.name} ${part.number} is only pushed on: it would jump off under torque.`,
    examples: () => {
      const rounded = nutLine({ line: { interface: { nutWear: said("rounded") } } });
      const socket = sampleKey({ facts: { kind: "drive socket" } });
      return [
        { name: "loose socket", facts: { ...rounded, part: socket }, speaks: true },
        {
          name: "clamped socket",
          facts: { ...rounded, part: sampleKey({ facts: { kind: "drive socket", retention: "clamped" } }) },
          speaks: false
        },
        { name: "good nut", facts: { ...nutLine(), part: socket }, speaks: false }
      ];
    }
  },
  {
    id: "nut-worn",
    topic: "no wheel",
    title: "A worn nut takes the tightest socket and small steps",
    scope: "line",
    severity: "warning",
    source: PRACTICE5,
    speaksOf: ["nut_wear"],
    speaks: ({ line }) => ["worn", "rounded"].includes(line.interface.nutWear?.value ?? "good"),
    sentence: ({ line }) => `${line.tag}: the nut is ${line.interface.nutWear?.value}: try sockets for the tightest one, seat it fully, go up in small steps.`,
    examples: () => [
      { name: "worn", facts: nutLine({ line: { interface: { nutWear: said("worn") } } }), speaks: true },
      { name: "good", facts: nutLine({ line: { interface: { nutWear: said("good") } } }), speaks: false }
    ]
  },
  {
    id: "nut-shape-unknown",
    topic: "no wheel",
    title: "Shape and size of the nut are asked",
    scope: "line",
    severity: "warning",
    source: PRACTICE5,
    speaksOf: ["nut_shape", "nut_size"],
    speaks: ({ duty }) => duty.grip.kind === "nut" && (duty.grip.nutShape === void 0 || (duty.grip.nutSizes ?? []).length !== 1),
    sentence: ({ line, duty }) => {
      const sizes = (duty.grip.nutSizes ?? []).map((size) => sayLength(size.nominal));
      return `${line.tag}: the nut is not described fully (${duty.grip.nutShape ?? "shape unknown"}, ${sizes.length === 0 ? "size unknown" : sizes.join(" or ")}): the kit carries what covers it; measure across the flats.`;
    },
    examples: () => [
      {
        name: "no shape",
        facts: nutLine({ duty: { grip: { kind: "nut", wheelRises: "no", stemRisesThroughWheel: "no" } } }),
        speaks: true
      },
      { name: "all known", facts: nutLine(), speaks: false }
    ]
  },
  {
    id: "instead-of-wheel-chain-wheel",
    topic: "no wheel",
    title: "A chain wheel is answered for what it is",
    scope: "line",
    severity: "warning",
    source: PRACTICE5,
    speaksOf: ["driven_by"],
    speaks: (facts) => drivenBy("chain wheel", facts),
    sentence: ({ line }) => `${line.tag} is worked by a chain wheel: take the chain and its guide off from a safe platform before anything is clamped to the wheel.`,
    examples: () => [
      {
        name: "chain wheel",
        facts: lineFacts({ line: { interface: { drivenBy: said("chain wheel") } } }),
        speaks: true
      },
      { name: "handwheel", facts: lineFacts({ line: { interface: { drivenBy: said("handwheel") } } }), speaks: false }
    ]
  },
  {
    id: "instead-of-wheel-pillar",
    topic: "no wheel",
    title: "A pillar or extension spindle has a weakest piece of its own",
    scope: "line",
    severity: "warning",
    source: PRACTICE5,
    speaksOf: ["driven_by", "spindle_size"],
    speaks: (facts) => drivenBy("pillar", facts) || drivenBy("extension spindle", facts),
    sentence: ({ line }) => `${line.tag} is worked through a ${line.interface.drivenBy?.value}: its pins, couplings and bearings are weaker than the valve; look at them first and go up in small steps.`,
    examples: () => [
      { name: "pillar", facts: lineFacts({ line: { interface: { drivenBy: said("pillar") } } }), speaks: true },
      { name: "nut", facts: lineFacts({ line: { interface: { drivenBy: said("nut") } } }), speaks: false }
    ]
  },
  {
    id: "instead-of-wheel-actuator",
    topic: "no wheel",
    title: "Another actuator is isolated before its hand drive is turned",
    scope: "line",
    severity: "warning",
    source: PRACTICE5,
    speaksOf: ["driven_by"],
    speaks: (facts) => drivenBy("actuator hand drive", facts),
    sentence: ({ line }) => `${line.tag} has an actuator: isolate and lock off its supply, engage the hand drive as its maker says, and keep to the hand drive\u2019s own torque.`,
    examples: () => [
      {
        name: "actuator",
        facts: lineFacts({ line: { interface: { drivenBy: said("actuator hand drive") } } }),
        speaks: true
      },
      { name: "handwheel", facts: lineFacts(), speaks: false }
    ]
  }
];

// lib/engineering/lifting.ts
function teamCapability(capabilities) {
  const team = capabilities.toSorted((a, b) => a - b).slice(0, 3);
  const share2 = [0, 1, 2 / 3, 1 / 2][team.length] ?? 0;
  return kilograms(share2 * team.reduce((sum, capability) => sum + capability, 0));
}

// lib/engineering/noise.ts
var NOISE_LOWER_ACTION = decibels(80);
var NOISE_UPPER_ACTION = decibels(85);
var NOISE_LIMIT = decibels(87);

// lib/engineering/vibration.ts
var VIBRATION_ACTION_VALUE = metresPerSecondSquared(2.5);
var VIBRATION_LIMIT_VALUE = metresPerSecondSquared(5);
var EIGHT_HOURS_S = 28800;
function dailyVibration(exposures) {
  const dose = exposures.reduce((sum, { vibration, time }) => sum + vibration ** 2 * time / EIGHT_HOURS_S, 0);
  return metresPerSecondSquared(Math.sqrt(dose));
}

// lib/rules/people.ts
var ONE_PERSON_KG = 25;
var TWO_PERSONS_KG = teamCapability([ONE_PERSON_KG, ONE_PERSON_KG]);
var LARGE_PACK_WH = 100;
var exposure = ({ core, duty }) => dailyVibration([{ vibration: core.drive.facts.vibration, time: seconds(core.figures.runTime * duty.qty) }]);
var PEOPLE_RULES = [
  {
    id: "vibration-screening",
    topic: "people",
    title: "Hand-arm vibration of this line alone stays below the action value",
    scope: "core",
    severity: "warning",
    source: "Directive 2002/44/EC: action value 2.5 m/s\xB2 A(8); screening figure for one person",
    speaksOf: ["qty", "drive"],
    speaks: (facts) => exposure(facts) > VIBRATION_ACTION_VALUE,
    sentence: (facts) => `${facts.line.tag}: ${sayMinutes(facts.core.figures.runTime * facts.duty.qty)} with ${facts.core.drive.number} is ${sayPlain(exposure(facts))} m/s\xB2 A(8) for one person, above the action value of ${sayPlain(VIBRATION_ACTION_VALUE)}: share the work, spread it over days.`,
    examples: () => {
      const shaky = sampleDrive({ facts: { vibration: metresPerSecondSquared(8) } });
      return [
        {
          name: "long and shaky",
          facts: { ...lineFacts(), core: sampleCore({ drive: shaky, figures: { runTime: seconds(4 * 3600) } }) },
          speaks: true
        },
        { name: "short", facts: { ...lineFacts(), core: sampleCore() }, speaks: false }
      ];
    }
  },
  {
    id: "hearing-protection",
    topic: "people",
    title: "Hearing protection at a loud drive",
    scope: "part",
    severity: "note",
    source: "Directive 2003/10/EC: upper action value 85 dB(A); screening figure",
    speaksOf: ["drive"],
    speaks: ({ part }) => part.role === "drive" && part.facts.soundPressure >= NOISE_UPPER_ACTION,
    sentence: ({ part }) => `${part.name} ${part.number} makes ${sayPlain(part.role === "drive" ? part.facts.soundPressure : 0)} dB(A) at the ear: hearing protection for everyone near.`,
    examples: () => [
      {
        name: "loud",
        facts: { ...lineFacts(), part: sampleDrive({ facts: { soundPressure: decibels(92) } }) },
        speaks: true
      },
      { name: "quiet", facts: { ...lineFacts(), part: sampleDrive() }, speaks: false }
    ]
  },
  {
    id: "lift-two-persons",
    topic: "people",
    title: "A heavy piece is lifted by two",
    scope: "part",
    severity: "note",
    source: "HSE INDG383 filter, from memory; two persons two thirds of their sum, HSE L23; screening figure",
    speaksOf: ["persons_per_crew"],
    speaks: ({ part, site }) => part.mass > ONE_PERSON_KG && part.mass <= TWO_PERSONS_KG && site.personsPerCrew > 1,
    sentence: ({ part }) => `${part.name} ${part.number} has ${sayMass(part.mass)}: two persons lift it.`,
    examples: () => [
      { name: "heavy", facts: { ...lineFacts(), part: sampleHead({ mass_kg: 32 }) }, speaks: true },
      { name: "light", facts: { ...lineFacts(), part: sampleHead() }, speaks: false }
    ]
  },
  {
    id: "lift-beyond-crew",
    topic: "people",
    title: "The crew can lift every piece",
    scope: "part",
    severity: "refusal",
    source: "HSE INDG383 filter, from memory; two persons two thirds of their sum, HSE L23; screening figure",
    speaksOf: ["persons_per_crew"],
    speaks: ({ part, site }) => part.mass > (site.personsPerCrew > 1 ? TWO_PERSONS_KG : ONE_PERSON_KG),
    sentence: ({ part, site }) => `${part.name} ${part.number} has ${sayMass(part.mass)}; a crew of ${site.personsPerCrew} does not lift that by hand.`,
    examples: () => [
      {
        name: "one person",
        facts: { ...lineFacts(), site: sampleSite({ personsPerCrew: 1 }), part: sampleHead({ mass_kg: 32 }) },
        speaks: true
      },
      { name: "two persons", facts: { ...lineFacts(), part: sampleHead({ mass_kg: 32 }) }, speaks: false },
      { name: "too heavy for two", facts: { ...lineFacts(), part: sampleHead({ mass_kg: 36 }) }, speaks: true }
    ]
  },
  {
    id: "lithium-large-packs",
    topic: "people",
    title: "Packs over 100 Wh are declared when they travel by air or sea",
    scope: "part",
    severity: "warning",
    source: "UN 3480 and 3481, special provision 188, from memory",
    speaksOf: ["transport", "drive"],
    speaks: ({ part, site }) => part.lithium !== void 0 && part.lithium.energy > LARGE_PACK_WH && site.transport !== "road",
    sentence: ({ part, site }) => `${part.name} ${part.number} holds packs of ${sayPlain(part.lithium?.energy ?? 0)} Wh: dangerous goods by ${site.transport}, to be declared and booked.`,
    examples: () => {
      const large = { ...sampleDrive(), lithium: { energy: wattHours(180), packs: 2 } };
      return [
        { name: "by air", facts: { ...lineFacts({ site: { transport: "air" } }), part: large }, speaks: true },
        { name: "by road", facts: { ...lineFacts(), part: large }, speaks: false }
      ];
    }
  },
  {
    id: "petrol-drained",
    topic: "people",
    title: "Petrol machines travel drained; fuel is never in the case",
    scope: "part",
    severity: "warning",
    source: "UN 3528 by road special provision 363, from memory; common practice, no source",
    speaksOf: ["transport", "drive"],
    speaks: ({ part }) => part.role === "drive" && part.facts.power.kind === "petrol",
    sentence: ({ part }) => `${part.name} ${part.number} travels drained, and fuel is never in its case; fuel is bought on site.`,
    examples: () => [
      {
        name: "petrol",
        facts: { ...lineFacts(), part: sampleDrive({ facts: { power: SAMPLE_PETROL } }) },
        speaks: true
      },
      { name: "battery", facts: { ...lineFacts(), part: sampleDrive() }, speaks: false }
    ]
  }
];

// lib/rules/place.ts
var PRACTICE6 = "common practice, no source";
var movesOrElectrical = (part) => part.role === "drive" || part.role === "head" || part.role === "option" && (part.facts.electronic || part.facts.kind === "torque limiter");
function misfit2({ part, place }) {
  if (place.zone === null || !movesOrElectrical(part)) return null;
  const answer = suitsPlace({
    marking: part.marking,
    place: { zone: place.zone, gasGroup: place.gasGroup, temperatureClass: place.temperatureClass }
  });
  return answer.ok ? null : answer.reason.sentence;
}
var source = (part) => part.role === "drive" ? part.facts.power.kind : null;
function packEnergy({ core }) {
  const { power } = core.drive.facts;
  return power.kind === "battery" ? power.voltage * power.capacity_ah * 3600 * 0.8 * power.efficiency : Number.POSITIVE_INFINITY;
}
var inZone = () => lineFacts({ place: { zone: said("1"), gasGroup: said("IIB"), temperatureClass: said("T3") } });
var MARKED = "II 2 G Ex h IIB T4 Gb";
var airDrive = (marking) => sampleDrive({
  facts: { power: SAMPLE_AIR, soundPressure: decibels(88) },
  ...marking === void 0 ? {} : { marking }
});
var petrolDrive = () => sampleDrive({ facts: { power: SAMPLE_PETROL } });
var PLACE_RULES = [
  {
    id: "zone-marking",
    topic: "place",
    title: "Everything electrical or moving is marked for the zone, gas group and temperature class",
    scope: "part",
    severity: "refusal",
    source: "2014/34/EU Annex I and II, 1999/92/EC, IEC 60079-14; from memory and the reference notes",
    speaksOf: ["zone", "gas_group", "temperature_class", "drive", "head", "option"],
    speaks: (facts) => misfit2(facts) !== null,
    sentence: (facts) => `${facts.line.tag}, ${facts.part.name} ${facts.part.number}: ${misfit2(facts) ?? ""}`,
    examples: () => [
      { name: "unmarked air motor", facts: { ...inZone(), part: airDrive() }, speaks: true },
      { name: "marked air motor", facts: { ...inZone(), part: airDrive(MARKED) }, speaks: false },
      { name: "unmarked head", facts: { ...inZone(), part: sampleHead() }, speaks: true },
      { name: "limiter", facts: { ...inZone(), part: sampleLimiter({ facts: { electronic: true } }) }, speaks: true },
      { name: "restraint", facts: { ...inZone(), part: sampleRestraint() }, speaks: false },
      { name: "no zone", facts: { ...lineFacts(), part: sampleDrive() }, speaks: false }
    ]
  },
  {
    id: "zone-facts-missing",
    topic: "place",
    title: "Gas group and temperature class of a zone are asked",
    scope: "line",
    severity: "warning",
    source: "IEC 60079-14, from memory",
    speaksOf: ["zone", "gas_group", "temperature_class"],
    speaks: ({ place }) => place.zone !== null && (place.gasGroup === null || place.temperatureClass === null),
    sentence: ({ line, place }) => `${line.tag} lies in zone ${place.zone}; ${place.gasGroup === null ? "its gas group" : "its temperature class"} is not given, and the hardest one is assumed.`,
    examples: () => [
      { name: "zone only", facts: lineFacts({ place: { zone: said("2") } }), speaks: true },
      { name: "all given", facts: inZone(), speaks: false }
    ]
  },
  {
    id: "zone-no-pack-change",
    topic: "place",
    title: "No pack change in a zone: one pack must last for the visit",
    scope: "core",
    severity: "refusal",
    source: PRACTICE6,
    speaksOf: ["zone", "drive"],
    speaks: (facts) => facts.place.zone !== null && facts.core.figures.energyPerVisit > packEnergy(facts),
    sentence: (facts) => `${facts.line.tag} takes ${sayPlain(facts.core.figures.energyPerVisit / 3600)} Wh at the valve, more than one pack of ${facts.core.drive.number} gives, and packs are not changed in zone ${facts.place.zone}.`,
    examples: () => [
      {
        name: "two packs",
        facts: { ...inZone(), core: sampleCore({ figures: { energyPerVisit: joules(2e6) } }) },
        speaks: true
      },
      { name: "one pack", facts: { ...inZone(), core: sampleCore() }, speaks: false },
      {
        name: "no zone",
        facts: { ...lineFacts(), core: sampleCore({ figures: { energyPerVisit: joules(2e6) } }) },
        speaks: false
      }
    ]
  },
  {
    id: "zone-packs-outside",
    topic: "place",
    title: "Packs are changed and charged outside the zone",
    scope: "part",
    severity: "warning",
    source: PRACTICE6,
    speaksOf: ["zone", "drive"],
    speaks: ({ part, place }) => source(part) === "battery" && place.zone !== null,
    sentence: ({ line, place }) => `${line.tag}: change and charge packs only outside zone ${place.zone}.`,
    examples: () => [
      { name: "battery in a zone", facts: { ...inZone(), part: sampleDrive() }, speaks: true },
      { name: "air in a zone", facts: { ...inZone(), part: airDrive(MARKED) }, speaks: false }
    ]
  },
  {
    id: "petrol-not-in-zone",
    topic: "place",
    title: "No petrol drive in a zone",
    scope: "part",
    severity: "refusal",
    source: "2014/34/EU; EN 1834-1, from memory",
    speaksOf: ["zone", "drive"],
    speaks: ({ part, place }) => source(part) === "petrol" && place.zone !== null,
    sentence: ({ line, part, place }) => `${line.tag} lies in zone ${place.zone}; ${part.name} ${part.number} has a petrol engine.`,
    examples: () => [
      { name: "zone", facts: { ...inZone(), part: petrolDrive() }, speaks: true },
      { name: "no zone", facts: { ...lineFacts(), part: petrolDrive() }, speaks: false }
    ]
  },
  {
    id: "petrol-not-enclosed",
    topic: "place",
    title: "No petrol drive indoors or in a chamber",
    scope: "part",
    severity: "refusal",
    source: "Carbon monoxide from engines in enclosed places: common practice, no source",
    speaksOf: ["enclosed", "drive"],
    speaks: ({ part, place }) => source(part) === "petrol" && place.enclosed,
    sentence: ({ line, part }) => `${line.tag} is enclosed; the exhaust of ${part.name} ${part.number} would gather there.`,
    examples: () => [
      {
        name: "chamber",
        facts: { ...lineFacts({ place: { enclosed: said(true) } }), part: petrolDrive() },
        speaks: true
      },
      { name: "open air", facts: { ...lineFacts(), part: petrolDrive() }, speaks: false }
    ]
  },
  {
    id: "oxygen-no-petrol-or-oil",
    topic: "place",
    title: "Oxygen service takes no fuel, oil, grease or lubricated air",
    scope: "part",
    severity: "refusal",
    source: PRACTICE6,
    speaksOf: ["service", "drive"],
    speaks: ({ part, place }) => place.service === "oxygen" && source(part) === "petrol",
    sentence: ({ line, part }) => `${line.tag} is in oxygen service; ${part.name} ${part.number} brings fuel and oil near it.`,
    examples: () => {
      const oxygen = lineFacts({ line: { process: { service: said("oxygen") } } });
      return [
        { name: "petrol", facts: { ...oxygen, part: petrolDrive() }, speaks: true },
        { name: "air", facts: { ...oxygen, part: airDrive() }, speaks: false }
      ];
    }
  },
  {
    id: "oxygen-clean",
    topic: "place",
    title: "Oxygen service: degreased tools, dry air",
    scope: "line",
    severity: "warning",
    source: PRACTICE6,
    speaksOf: ["service"],
    speaks: ({ place }) => place.service === "oxygen",
    sentence: ({ line }) => `${line.tag} is in oxygen service: everything that touches the valve degreased and bagged, dry air only, no lubricator, no grease on the stem.`,
    examples: () => [
      { name: "oxygen", facts: lineFacts({ line: { process: { service: said("oxygen") } } }), speaks: true },
      { name: "water", facts: lineFacts({ line: { process: { service: said("potable") } } }), speaks: false }
    ]
  },
  {
    id: "potable-hygiene",
    topic: "place",
    title: "Drinking water and food: clean equipment kept for it",
    scope: "line",
    severity: "note",
    source: PRACTICE6,
    speaksOf: ["service"],
    speaks: ({ place }) => place.service === "potable" || place.service === "food",
    sentence: ({ line, place }) => `${line.tag} is in ${place.service} service: equipment disinfected, never used on sewage, no oil into the chamber.`,
    examples: () => [
      { name: "potable", facts: lineFacts({ line: { process: { service: said("potable") } } }), speaks: true },
      { name: "other", facts: lineFacts(), speaks: false }
    ]
  },
  {
    id: "toxic-or-sewage",
    topic: "place",
    title: "Toxic service and sewage: the place\u2019s own rules first",
    scope: "line",
    severity: "warning",
    source: PRACTICE6,
    speaksOf: ["service"],
    speaks: ({ place }) => place.service === "toxic" || place.service === "sewage",
    sentence: ({ line, place }) => `${line.tag} is in ${place.service} service: packing may leak when the stem turns; gas test, protection and cleaning after use as the place asks.`,
    examples: () => [
      { name: "toxic", facts: lineFacts({ line: { process: { service: said("toxic") } } }), speaks: true },
      { name: "other", facts: lineFacts(), speaks: false }
    ]
  },
  {
    id: "enclosed-permit",
    topic: "place",
    title: "An enclosed place is entered under its own rules",
    scope: "line",
    severity: "warning",
    source: "Confined-space rules of the place come first",
    speaksOf: ["enclosed"],
    speaks: ({ place }) => place.enclosed,
    sentence: ({ line }) => `${line.tag} is enclosed: confined-space rules of the place, gas test and a person outside come before any equipment.`,
    examples: () => [
      { name: "chamber", facts: lineFacts({ place: { enclosed: said(true) } }), speaks: true },
      { name: "open", facts: lineFacts(), speaks: false }
    ]
  },
  {
    id: "source-allowed",
    topic: "place",
    title: "The site allows the power source",
    scope: "part",
    severity: "refusal",
    source: "The site\u2019s own rule",
    speaksOf: ["sources_allowed", "drive"],
    speaks: ({ part, site }) => part.role === "drive" && !site.sourcesAllowed.includes(part.facts.power.kind),
    sentence: ({ part, site }) => `The site allows ${site.sourcesAllowed.join(", ") || "no power source"}; ${part.name} ${part.number} runs on ${source(part) ?? ""}.`,
    examples: () => [
      {
        name: "battery only",
        facts: { ...lineFacts({ site: { sourcesAllowed: ["battery"] } }), part: airDrive() },
        speaks: true
      },
      { name: "allowed", facts: { ...lineFacts(), part: airDrive() }, speaks: false }
    ]
  },
  {
    id: "air-there",
    topic: "place",
    title: "An air drive needs the site\u2019s air",
    scope: "part",
    severity: "refusal",
    source: PRACTICE6,
    speaksOf: ["air_pressure", "air_flow", "drive"],
    speaks: ({ part, site }) => part.role === "drive" && part.facts.power.kind === "air" && (site.airPressure === void 0 || site.airPressure.low < part.facts.power.lowestPressure || site.airFlow !== void 0 && site.airFlow.low < part.facts.power.consumption),
    sentence: ({ part, site }) => {
      const need = part.role === "drive" && part.facts.power.kind === "air" ? `${sayPlain(part.facts.power.lowestPressure / 1e5)} bar and ${sayPlain(part.facts.power.consumption * 1e3)} l/s of free air` : "";
      const has = site.airPressure === void 0 ? "says nothing of air" : `gives ${sayPlain(site.airPressure.low / 1e5)} bar${site.airFlow === void 0 ? "" : ` and ${sayPlain(site.airFlow.low * 1e3)} l/s`}`;
      return `${part.name} ${part.number} needs ${need}; the site ${has}.`;
    },
    examples: () => {
      const { airPressure: _none, ...noAir } = lineFacts().site;
      return [
        { name: "air there", facts: { ...lineFacts(), part: airDrive() }, speaks: false },
        { name: "nothing said", facts: { ...lineFacts(), site: noAir, part: airDrive() }, speaks: true },
        {
          name: "too little flow",
          facts: { ...lineFacts({ site: { airFlow: stated("m\xB3/s", cubicMetresPerSecond(0.01)) } }), part: airDrive() },
          speaks: true
        }
      ];
    }
  },
  {
    id: "charging-told",
    topic: "place",
    title: "Where packs are charged is asked",
    scope: "part",
    severity: "note",
    source: PRACTICE6,
    speaksOf: ["mains_voltage", "mains_plug", "drive"],
    speaks: ({ part, site }) => source(part) === "battery" && (site.mainsVoltage === void 0 || site.mainsPlug === void 0),
    sentence: ({ part }) => `${part.name} ${part.number}: voltage and plug of the charging place are not given; tell them before the kit is packed.`,
    examples: () => [
      { name: "not given", facts: { ...lineFacts(), part: sampleDrive() }, speaks: true },
      {
        name: "given",
        facts: { ...lineFacts({ site: { mainsVoltage: 230, mainsPlug: "CEE 7/7" } }), part: sampleDrive() },
        speaks: false
      }
    ]
  },
  {
    id: "noise-limit",
    topic: "place",
    title: "The drive is no louder than the place allows",
    scope: "part",
    severity: "refusal",
    source: "The site\u2019s own rule",
    speaksOf: ["noise_limit", "drive"],
    speaks: ({ part, place }) => part.role === "drive" && place.noiseLimit_db !== null && part.facts.soundPressure > place.noiseLimit_db,
    sentence: ({ part, place, line }) => `${line.tag} allows ${sayPlain(place.noiseLimit_db ?? 0)} dB(A); ${part.name} ${part.number} makes ${sayPlain(part.role === "drive" ? part.facts.soundPressure : 0)}.`,
    examples: () => {
      const quiet = lineFacts({ place: { noiseLimit: stated("dB", 80) } });
      return [
        { name: "too loud", facts: { ...quiet, part: airDrive() }, speaks: true },
        { name: "quiet", facts: { ...quiet, part: sampleDrive() }, speaks: false }
      ];
    }
  },
  {
    id: "locked-never-moved",
    topic: "place",
    title: "What someone else has locked or isolated is never moved",
    scope: "line",
    severity: "refusal",
    source: "Isolation rules of the place come first",
    speaksOf: ["locked"],
    speaks: ({ line }) => line.state.locked?.value === true,
    sentence: ({ line }) => `${line.tag} is locked or isolated by someone else: it is never moved. It is planned when whoever locked it has released it in writing.`,
    examples: () => [
      { name: "locked", facts: lineFacts({ line: { state: { locked: said(true) } } }), speaks: true },
      { name: "free", facts: lineFacts(), speaks: false }
    ]
  },
  {
    id: "seized-to-desk",
    topic: "place",
    title: "A seized valve goes to the Desk",
    scope: "line",
    severity: "refusal",
    source: PRACTICE6,
    speaksOf: ["condition"],
    speaks: ({ duty }) => duty.seized,
    sentence: ({ line }) => `${line.tag} is said to be seized: it is not planned; the Desk talks to the customer about freeing or replacing it.`,
    examples: () => [
      { name: "seized", facts: lineFacts({ duty: { seized: true } }), speaks: true },
      { name: "free", facts: lineFacts(), speaks: false }
    ]
  },
  {
    id: "place-assumed",
    topic: "place",
    title: "What nobody said of the place is listed",
    scope: "line",
    severity: "note",
    source: "Assumptions of this quote",
    speaksOf: ["zone", "enclosed", "anchor", "faces"],
    speaks: ({ place }) => place.assumed.length > 0,
    sentence: ({ line, place }) => `${line.tag}: ${place.assumed.join(" ")}`,
    examples: () => [
      { name: "bare line", facts: lineFacts({ line: { place: {} } }), speaks: true },
      { name: "all said", facts: lineFacts(), speaks: false }
    ]
  }
];

// lib/rules/restraint.ts
var PRACTICE7 = "common practice, no source";
var RATING = "The part\u2019s own rating";
var STILL_UP_TO_M = 0.02;
var SLENDER_FROM_M = 0.4;
var travel = (facts) => facts.duty.grip.travel?.high ?? 0;
function slenderBy({ links }) {
  const long = links.map(
    ({ adapter, extensions }) => (adapter.facts.length?.high ?? 0) + extensions.reduce((sum, extension) => sum + extension.facts.length.high, 0)
  );
  return Math.max(0, ...long);
}
var chainArm = sampleRestraint({
  number: "SR-2",
  facts: { kind: "reaction arm with chain", directions: "one way", sideLoad: "single anchor" }
});
var whole2 = (change) => ({
  ...reactionFacts(),
  core: sampleCore(),
  links: [{ adapter: sampleWheelAdapter(), extensions: [] }],
  ...change
});
var RESTRAINT_RULES = [
  {
    id: "restraint-fits-head",
    topic: "restraint",
    title: "The restraint mounts on the head",
    scope: "reaction",
    severity: "refusal",
    source: RATING,
    speaksOf: ["restraint", "head"],
    speaks: ({ restraint, core }) => !restraint.facts.headKinds.includes(core.head.facts.kind),
    sentence: ({ restraint, core }) => `${restraint.name} ${restraint.number} mounts on ${restraint.facts.headKinds.join(" or ")} heads; ${core.head.number} is ${core.head.facts.kind}.`,
    examples: () => [
      { name: "mounts", facts: reactionFacts(), speaks: false },
      {
        name: "does not",
        facts: reactionFacts({ restraint: sampleRestraint({ facts: { headKinds: ["inline"] } }) }),
        speaks: true
      }
    ]
  },
  {
    id: "restraint-covers-stall",
    topic: "restraint",
    title: "The highest stall torque cannot overload the restraint",
    scope: "reaction",
    severity: "refusal",
    source: RATING,
    speaksOf: ["restraint", "drive", "head"],
    speaks: ({ restraint, core }) => core.figures.stallAtValve > restraint.facts.torqueRating + 1e-9,
    sentence: ({ restraint, core }) => `${core.drive.number} with ${core.head.number} stalls at up to ${sayTorque(core.figures.stallAtValve)}; ${restraint.name} ${restraint.number} holds ${sayTorque(restraint.facts.torqueRating)}.`,
    examples: () => [
      { name: "covered", facts: reactionFacts(), speaks: false },
      {
        name: "weak",
        facts: reactionFacts({ restraint: sampleRestraint({ facts: { torqueRating: newtonMetres(300) } }) }),
        speaks: true
      }
    ]
  },
  {
    id: "restraint-force-within-rating",
    topic: "restraint",
    title: "The pull in the restraint stays within its force rating, shock included",
    scope: "reaction",
    severity: "refusal",
    source: "Statics: force = torque / (arm \xB7 sine of the pull); the shock factor is common practice, no source",
    speaksOf: ["restraint", "drive", "head"],
    speaks: ({ restraint, reaction }) => reaction.force > restraint.facts.forceRating + 1e-9,
    sentence: ({ restraint, reaction }) => `At an arm of ${sayLength(reaction.arm_m)} the pull reaches ${sayForce(reaction.force)}; ${restraint.name} ${restraint.number} holds ${sayForce(restraint.facts.forceRating)}.`,
    examples: () => [
      { name: "within", facts: reactionFacts(), speaks: false },
      { name: "beyond", facts: reactionFacts({ reaction: { force: newtons(5e3) } }), speaks: true }
    ]
  },
  {
    id: "restraint-both-ways",
    topic: "restraint",
    title: "Reversing work needs a restraint that holds both ways, or a second chain",
    scope: "reaction",
    severity: "refusal",
    source: "Statics: a chain or strap only pulls",
    speaksOf: ["strokes", "restraint", "accessory"],
    speaks: ({ restraint, secondChain, duty }) => restraint.facts.directions === "one way" && secondChain === null && duty.strokes > 1,
    sentence: ({ restraint, line, duty }) => `${line.tag} is stroked ${duty.strokes} times, both ways; ${restraint.name} ${restraint.number} holds one way and no second chain is with it.`,
    examples: () => [
      { name: "one way, two strokes", facts: reactionFacts({ restraint: chainArm }), speaks: true },
      {
        name: "one way, one stroke",
        facts: reactionFacts({ ...lineFacts({ duty: { strokes: 1 } }), restraint: chainArm }),
        speaks: false
      },
      { name: "both ways", facts: reactionFacts(), speaks: false }
    ]
  },
  {
    id: "restraint-faces",
    topic: "restraint",
    title: "The restraint works whichever way the wheel faces",
    scope: "part",
    severity: "refusal",
    source: RATING,
    speaksOf: ["faces", "restraint"],
    speaks: ({ part, place }) => part.role === "restraint" && !part.facts.facings.includes(place.faces),
    sentence: ({ part, place, line }) => `${line.tag} faces ${place.faces}; ${part.name} ${part.number} is for ${part.role === "restraint" ? part.facts.facings.join(" or ") : ""}.`,
    examples: () => [
      {
        name: "up only",
        facts: {
          ...lineFacts({ place: { faces: said("side") } }),
          part: sampleRestraint({ facts: { facings: ["up"] } })
        },
        speaks: true
      },
      {
        name: "any",
        facts: { ...lineFacts({ place: { faces: said("side") } }), part: sampleRestraint() },
        speaks: false
      }
    ]
  },
  {
    id: "restraint-follows-travel",
    topic: "restraint",
    title: "A wheel that rises with its stem needs a restraint that follows",
    scope: "part",
    severity: "refusal",
    source: PRACTICE7,
    speaksOf: ["stem", "travel", "restraint"],
    speaks: (facts) => facts.part.role === "restraint" && !facts.part.facts.followsTravel && facts.duty.grip.wheelRises !== "no" && (facts.duty.grip.travel === void 0 || travel(facts) > STILL_UP_TO_M),
    sentence: (facts) => `${facts.line.tag}: the wheel ${facts.duty.grip.wheelRises === "maybe" ? "may rise" : "rises"} with its stem${travel(facts) > 0 ? ` by ${sayLength(travel(facts))}` : ""}; ${facts.part.name} ${facts.part.number} does not follow.`,
    examples: () => {
      const rising = lineFacts({ duty: { grip: sampleGrip({ wheelRises: "yes", travel: stated("m", 0.2) }) } });
      const fixed2 = sampleRestraint({ facts: { followsTravel: false } });
      return [
        { name: "fixed bar on a rising wheel", facts: { ...rising, part: fixed2 }, speaks: true },
        { name: "follows", facts: { ...rising, part: sampleRestraint() }, speaks: false },
        { name: "wheel stays", facts: { ...lineFacts(), part: fixed2 }, speaks: false }
      ];
    }
  },
  {
    id: "side-load-on-slender",
    topic: "restraint",
    title: "A single anchor pulls a slender chain sideways",
    scope: "whole",
    severity: "warning",
    source: PRACTICE7,
    speaksOf: ["restraint", "extension", "adapter", "driven_by"],
    speaks: (facts) => facts.restraint.facts.sideLoad === "single anchor" && (slenderBy(facts) > SLENDER_FROM_M || facts.line.interface.drivenBy?.value === "extension spindle"),
    sentence: (facts) => `${facts.line.tag}: ${facts.restraint.name} ${facts.restraint.number} pulls with up to ${sayForce(facts.reaction.sideLoad)} sideways on a slender chain: a twin-point arm, yoke clamp or stand is better; steady the head by hand-free means.`,
    examples: () => [
      {
        name: "chain arm on a long key",
        facts: whole2({
          ...lineFacts({ duty: { grip: SAMPLE_NUT } }),
          restraint: chainArm,
          links: [{ adapter: sampleKey(), extensions: [] }]
        }),
        speaks: true
      },
      {
        name: "twin-point arm on it",
        facts: whole2({ links: [{ adapter: sampleKey(), extensions: [] }] }),
        speaks: false
      },
      { name: "chain arm on a wheel", facts: whole2({ restraint: chainArm }), speaks: false }
    ]
  },
  {
    id: "reaction-told",
    topic: "restraint",
    title: "The crew knows the pull that the anchor must hold",
    scope: "reaction",
    severity: "note",
    source: "Statics: force = torque / (arm \xB7 sine of the pull); the shock factor is common practice, no source",
    speaksOf: ["restraint"],
    speaks: ({ reaction }) => reaction.force > 0,
    sentence: ({ restraint, reaction, line }) => `${line.tag}: ${restraint.name} ${restraint.number} at an arm of ${sayLength(reaction.arm_m)} pulls with up to ${sayForce(reaction.force)}, shock included; no drive is held by hand alone.`,
    examples: () => [
      { name: "any", facts: reactionFacts(), speaks: true },
      { name: "no pull", facts: reactionFacts({ reaction: { force: newtons(0) } }), speaks: false }
    ]
  },
  {
    id: "right-angle-input-reaction",
    topic: "restraint",
    title: "A right-angle head twists the drive\u2019s handle as well",
    scope: "core",
    severity: "note",
    source: "Balance of a gear head",
    speaksOf: ["head", "drive"],
    speaks: ({ core }) => core.head.facts.kind === "right-angle",
    sentence: ({ core }) => `Head ${core.head.number} is right-angled: the drive itself is twisted by up to ${sayTorque(core.figures.stallAtDrive)} about its own axis; both hands on the handles, feet firm.`,
    examples: () => [
      {
        name: "right angle",
        facts: { ...lineFacts(), core: sampleCore({ head: sampleHead({ facts: { kind: "right-angle" } }) }) },
        speaks: true
      },
      { name: "open centre", facts: { ...lineFacts(), core: sampleCore() }, speaks: false }
    ]
  }
];

// lib/engineering/ground-plate.ts
var SQUARE_MEAN_RADIUS = (Math.SQRT2 + Math.log(1 + Math.SQRT2)) / 6;
var UNFIT_SURFACES = [
  "grating",
  "grid",
  "slope",
  "sloping",
  "ice",
  "icy",
  "snow",
  "chamber roof",
  "cover slab",
  "mud",
  "sand"
];
function isUnfitForPlate(surface) {
  const words = surface.toLowerCase();
  return UNFIT_SURFACES.some((unfit) => new RegExp(`\\b${unfit}\\b`).test(words));
}

// lib/rules/restraint-site.ts
var PRACTICE8 = "common practice, no source";
var STANDING_ANCHORS = ["structure", "large pipe", "flange", "yoke"];
var restraintOf = ({ part }) => part.role === "restraint" ? part : null;
function anchorAnswer(restraint, { place }) {
  const wanted = restraint.facts.needs.filter((need) => STANDING_ANCHORS.includes(need));
  if (wanted.length === 0 || wanted.length < restraint.facts.needs.length) return null;
  if (place.anchor === "unknown" || place.anchor === "other") return "unknown";
  if (wanted.includes(place.anchor)) return "met";
  return "not met";
}
function yokeAnswer({ line, duty }) {
  if (duty.movement === "keyed" || duty.grip.kind === "nut") return "not met";
  const stem = line.stem.kind?.value;
  if (stem === void 0) return "unknown";
  return stem === "non-rising" ? "not met" : "met";
}
function allowedBySite(restraint, { place }) {
  if (place.anchorsAllowed === null) return true;
  const anchors = restraint.facts.needs.filter((need) => STANDING_ANCHORS.includes(need) || need === "vehicle");
  return anchors.length === 0 || anchors.some((need) => place.anchorsAllowed?.includes(need));
}
var at = (change, part = sampleRestraint()) => ({
  ...lineFacts(change),
  part
});
var yokeClamp = sampleRestraint({ facts: { kind: "yoke clamp", needs: ["yoke"] } });
var towBar = sampleRestraint({ facts: { kind: "tow-bar brace", needs: ["vehicle"], reach: metres(3) } });
var plate = sampleRestraint({ facts: { kind: "ground plate", needs: ["firm ground"] } });
var stand = sampleRestraint({ facts: { kind: "street stand", needs: ["street surface"] } });
var RESTRAINT_SITE_RULES = [
  {
    id: "anchor-there",
    topic: "restraint",
    title: "The anchor that the restraint needs is there",
    scope: "part",
    severity: "refusal",
    source: PRACTICE8,
    speaksOf: ["anchor", "restraint"],
    speaks: (facts) => {
      const restraint = restraintOf(facts);
      if (restraint === null || restraint.facts.kind === "yoke clamp") return false;
      return anchorAnswer(restraint, facts) === "not met";
    },
    sentence: (facts) => `${facts.line.tag}: ${facts.part.name} ${facts.part.number} needs ${restraintOf(facts)?.facts.needs.join(" or ")}; the anchor there is \u201C${facts.place.anchorText}\u201D.`,
    examples: () => [
      { name: "structure there", facts: at({}), speaks: false },
      { name: "none there", facts: at({ place: { anchor: said("none") } }), speaks: true },
      { name: "nobody says", facts: at({ line: { place: {} } }), speaks: false }
    ]
  },
  {
    id: "anchor-not-said",
    topic: "restraint",
    title: "An anchor that nobody mentions is looked for before the visit",
    scope: "part",
    severity: "warning",
    source: PRACTICE8,
    speaksOf: ["anchor", "restraint"],
    speaks: (facts) => {
      const restraint = restraintOf(facts);
      return restraint !== null && restraint.facts.kind !== "yoke clamp" && anchorAnswer(restraint, facts) === "unknown";
    },
    sentence: (facts) => `${facts.line.tag}: ${facts.part.name} ${facts.part.number} needs ${restraintOf(facts)?.facts.needs.join(" or ")}, and the list does not say that one is there: assumed, to be looked at before the visit.`,
    examples: () => [
      { name: "nobody says", facts: at({ line: { place: {} } }), speaks: true },
      { name: "said", facts: at({}), speaks: false }
    ]
  },
  {
    id: "anchor-must-not-be-used",
    topic: "restraint",
    title: "Small pipe, handrail, tray, ladder or scaffold is no anchor",
    scope: "line",
    severity: "warning",
    source: PRACTICE8,
    speaksOf: ["anchor"],
    speaks: ({ place }) => place.anchor === "forbidden",
    sentence: ({ line, place }) => `${line.tag}: \u201C${place.anchorText}\u201D must not take the reaction; small pipe, handrails, trays, ladders and scaffold are no anchors.`,
    examples: () => [
      { name: "handrail", facts: lineFacts({ place: { anchor: said("handrail") } }), speaks: true },
      { name: "structure", facts: lineFacts(), speaks: false }
    ]
  },
  {
    id: "anchor-allowed-by-site",
    topic: "restraint",
    title: "The site allows the anchor",
    scope: "part",
    severity: "refusal",
    source: "The site\u2019s own rule",
    speaksOf: ["anchors_allowed", "restraint"],
    speaks: (facts) => {
      const restraint = restraintOf(facts);
      return restraint !== null && !allowedBySite(restraint, facts);
    },
    sentence: (facts) => `The site allows ${facts.place.anchorsAllowed?.length === 0 ? "no anchors" : `${facts.place.anchorsAllowed?.join(", ")} as anchors`}; ${facts.part.name} ${facts.part.number} needs ${restraintOf(facts)?.facts.needs.join(" or ")}.`,
    examples: () => [
      { name: "not allowed", facts: at({ site: { anchorsAllowed: ["yoke"] } }), speaks: true },
      { name: "allowed", facts: at({ site: { anchorsAllowed: ["structure"] } }), speaks: false },
      { name: "nothing said", facts: at({}), speaks: false }
    ]
  },
  {
    id: "yoke-there",
    topic: "restraint",
    title: "A yoke clamp needs a yoke",
    scope: "part",
    severity: "refusal",
    source: PRACTICE8,
    speaksOf: ["stem", "anchor", "restraint"],
    speaks: (facts) => restraintOf(facts)?.facts.kind === "yoke clamp" && facts.place.anchor !== "yoke" && yokeAnswer(facts) !== "met",
    sentence: (facts) => `${facts.line.tag}: ${facts.part.name} ${facts.part.number} clamps a yoke, and nothing says that this valve has one (a rising stem has).`,
    examples: () => [
      {
        name: "rising stem",
        facts: at({ line: { stem: { kind: said("rising through the wheel") } } }, yokeClamp),
        speaks: false
      },
      { name: "yoke as anchor", facts: at({ place: { anchor: said("yoke") } }, yokeClamp), speaks: false },
      { name: "non-rising", facts: at({ line: { stem: { kind: said("non-rising") } } }, yokeClamp), speaks: true },
      { name: "nobody says", facts: at({}, yokeClamp), speaks: true }
    ]
  },
  {
    id: "vehicle-near-enough",
    topic: "restraint",
    title: "A tow-bar brace needs a vehicle within its reach",
    scope: "part",
    severity: "refusal",
    source: PRACTICE8,
    speaksOf: ["vehicle_distance", "vehicle_access", "restraint"],
    speaks: (facts) => {
      const restraint = restraintOf(facts);
      if (restraint === null || !restraint.facts.needs.includes("vehicle")) return false;
      const { vehicle_m } = facts.place;
      return vehicle_m === "none" || vehicle_m !== "near" && vehicle_m > restraint.facts.reach;
    },
    sentence: (facts) => {
      const { vehicle_m } = facts.place;
      const where = typeof vehicle_m === "number" ? `a vehicle comes within ${sayLength(vehicle_m)}` : "no vehicle comes near";
      return `${facts.line.tag}: ${where}; ${facts.part.name} ${facts.part.number} needs one within ${sayLength(restraintOf(facts)?.facts.reach ?? 0)}.`;
    },
    examples: () => [
      { name: "near", facts: at({ place: { vehicleDistance: stated("m", 2) } }, towBar), speaks: false },
      { name: "far", facts: at({ place: { vehicleDistance: stated("m", 8) } }, towBar), speaks: true },
      { name: "site lets vehicles in", facts: at({}, towBar), speaks: false },
      { name: "site lets none in", facts: at({ site: { vehicleAccess: false } }, towBar), speaks: true }
    ]
  },
  {
    id: "vehicle-braked",
    topic: "restraint",
    title: "The vehicle is braked and chocked and nobody stands between",
    scope: "part",
    severity: "warning",
    source: PRACTICE8,
    speaksOf: ["restraint", "vehicle_distance"],
    speaks: (facts) => restraintOf(facts)?.facts.kind === "tow-bar brace",
    sentence: (facts) => `${facts.line.tag}: vehicle within ${sayLength(restraintOf(facts)?.facts.reach ?? 0)}, brake on, wheels chocked, nobody between vehicle and valve.`,
    examples: () => [
      { name: "tow bar", facts: at({}, towBar), speaks: true },
      { name: "other", facts: at({}), speaks: false }
    ]
  },
  {
    id: "ground-fit-for-plate",
    topic: "restraint",
    title: "No plate or prop on grating, slope, ice or a chamber roof",
    scope: "part",
    severity: "refusal",
    source: PRACTICE8,
    speaksOf: ["surface", "restraint"],
    speaks: (facts) => {
      const needs = restraintOf(facts)?.facts.needs ?? [];
      const standsOnGround = needs.some((need) => ["firm ground", "hard floor", "street surface"].includes(need));
      return standsOnGround && isUnfitForPlate(facts.place.surface);
    },
    sentence: (facts) => `${facts.line.tag} stands on \u201C${facts.place.surface}\u201D; ${facts.part.name} ${facts.part.number} must not be used there.`,
    examples: () => [
      { name: "grating", facts: at({ place: { surface: said("steel grating") } }, plate), speaks: true },
      { name: "concrete", facts: at({ place: { surface: said("concrete") } }, plate), speaks: false }
    ]
  },
  {
    id: "ground-weight-stays",
    topic: "restraint",
    title: "A ground plate holds only while its weight stands on it",
    scope: "part",
    severity: "warning",
    source: PRACTICE8,
    speaksOf: ["restraint"],
    speaks: (facts) => restraintOf(facts)?.facts.kind === "ground plate",
    sentence: (facts) => `${facts.line.tag}: ${facts.part.name} ${facts.part.number} holds only on level firm ground with a person on it all the time; nobody steps off while the drive runs.`,
    examples: () => [
      { name: "plate", facts: at({}, plate), speaks: true },
      { name: "other", facts: at({}), speaks: false }
    ]
  },
  {
    id: "street-stand-for-keys",
    topic: "restraint",
    title: "A street stand is for keyed valves in a street",
    scope: "part",
    severity: "refusal",
    source: PRACTICE8,
    speaksOf: ["driven_by", "restraint"],
    speaks: (facts) => restraintOf(facts)?.facts.kind === "street stand" && facts.duty.grip.kind !== "nut",
    sentence: (facts) => `${facts.line.tag} has a wheel; ${facts.part.name} ${facts.part.number} stands over a valve key.`,
    examples: () => [
      { name: "wheel", facts: at({}, stand), speaks: true },
      { name: "nut", facts: at({ duty: { grip: SAMPLE_NUT } }, stand), speaks: false }
    ]
  },
  {
    id: "ground-assumed-firm",
    topic: "restraint",
    title: "Ground that nobody described is looked at",
    scope: "part",
    severity: "note",
    source: PRACTICE8,
    speaksOf: ["surface", "restraint"],
    speaks: (facts) => {
      const needs = restraintOf(facts)?.facts.needs ?? [];
      return needs.some((need) => ["firm ground", "hard floor", "street surface"].includes(need)) && facts.place.surface === "";
    },
    sentence: (facts) => `${facts.line.tag}: nobody says what the ground is; firm and level ground is assumed for ${facts.part.name} ${facts.part.number}.`,
    examples: () => [
      { name: "not said", facts: at({}, plate), speaks: true },
      { name: "said", facts: at({ place: { surface: said("concrete") } }, plate), speaks: false }
    ]
  },
  {
    id: "workshop-enquiry",
    topic: "restraint",
    title: "A purpose-made restraint is an enquiry to the workshop",
    scope: "part",
    severity: "warning",
    source: "house rule",
    speaksOf: ["restraint"],
    speaks: (facts) => facts.part.madeToOrder,
    sentence: (facts) => `${facts.line.tag}: no stock restraint fits; ${facts.part.name} ${facts.part.number} is made to order: workshop enquiry, with photos and measures of the place, before a date is promised.`,
    examples: () => [
      { name: "made to order", facts: at({}, sampleRestraint({ madeToOrder: true })), speaks: true },
      { name: "stock", facts: at({}), speaks: false }
    ]
  }
];

// lib/rules/speed.ts
var PRACTICE9 = "common practice, no source";
var fastest = ({ core }) => Math.max(core.figures.opening.fastest, core.figures.closing.fastest);
var shortest = ({ core }) => Math.min(core.figures.opening.strokeTime.low, core.figures.closing.strokeTime.low);
var fast = () => ({
  ...lineFacts(),
  core: sampleCore({ figures: { opening: sampleCoreDirection({ fastest: perMinute(90) }) } })
});
var SPEED_RULES = [
  {
    id: "input-speed",
    topic: "torque",
    title: "The valve\u2019s input is not turned faster than it may be",
    scope: "core",
    severity: "refusal",
    source: "The line\u2019s own limit; where none is given, common practice, no source",
    speaksOf: ["max_input_speed", "drive", "head"],
    speaks: (facts) => fastest(facts) > facts.duty.maxInputSpeed.nominal + 1e-9,
    sentence: (facts) => `${facts.line.tag} may be turned at ${sayPlain(facts.duty.maxInputSpeed.nominal)} 1/min; ${facts.core.drive.number} in gear \u201C${facts.core.gear.name}\u201D with ${facts.core.head.number} turns it at ${sayPlain(fastest(facts))}.`,
    examples: () => [
      { name: "too fast", facts: fast(), speaks: true },
      { name: "slow enough", facts: { ...lineFacts(), core: sampleCore() }, speaks: false }
    ]
  },
  {
    id: "stroke-time",
    topic: "torque",
    title: "A stroke does not take less than its shortest permitted time",
    scope: "core",
    severity: "refusal",
    source: "The line\u2019s own limit against surge",
    speaksOf: ["min_stroke_time", "drive", "head"],
    speaks: (facts) => facts.duty.minStrokeTime !== null && shortest(facts) < facts.duty.minStrokeTime.nominal - 1e-9,
    sentence: (facts) => `${facts.line.tag} must not be stroked in less than ${sayMinutes(facts.duty.minStrokeTime?.nominal ?? 0)}; ${facts.core.drive.number} in gear \u201C${facts.core.gear.name}\u201D with ${facts.core.head.number} would do it in ${sayMinutes(shortest(facts))}.`,
    examples: () => [
      {
        name: "too short",
        facts: { ...lineFacts({ duty: { minStrokeTime: stated("s", 300) } }), core: sampleCore() },
        speaks: true
      },
      {
        name: "long enough",
        facts: { ...lineFacts({ duty: { minStrokeTime: stated("s", 60) } }), core: sampleCore() },
        speaks: false
      }
    ]
  },
  {
    id: "input-speed-uncertain",
    topic: "torque",
    title: "A permitted speed that is only a guess is asked for",
    scope: "core",
    severity: "warning",
    source: PRACTICE9,
    speaksOf: ["max_input_speed", "drive"],
    speaks: (facts) => fastest(facts) <= facts.duty.maxInputSpeed.nominal && fastest(facts) > facts.duty.maxInputSpeed.low,
    sentence: (facts) => `${facts.line.tag}: the highest permitted speed may be as low as ${sayPlain(facts.duty.maxInputSpeed.low)} 1/min and the chain can turn at ${sayPlain(fastest(facts))}: keep the speed down until the maker\u2019s figure is known.`,
    examples: () => [
      {
        name: "in the range",
        facts: { ...lineFacts({ duty: { maxInputSpeed: ranged("1/min", 15, 40) } }), core: sampleCore() },
        speaks: true
      },
      { name: "known", facts: { ...lineFacts(), core: sampleCore() }, speaks: false }
    ]
  },
  {
    id: "head-input-speed",
    topic: "torque",
    title: "The head is not driven faster than it may be",
    scope: "core",
    severity: "refusal",
    source: "The part\u2019s own rating",
    speaksOf: ["head", "drive"],
    speaks: ({ core }) => core.figures.inputSpeed > core.head.facts.maxInputSpeed + 1e-9,
    sentence: ({ core }) => `Head ${core.head.number} takes ${sayPlain(core.head.facts.maxInputSpeed)} 1/min at its input; ${core.drive.number} in gear \u201C${core.gear.name}\u201D runs at ${sayPlain(core.figures.inputSpeed)}.`,
    examples: () => [
      {
        name: "slow head",
        facts: { ...lineFacts(), core: sampleCore({ head: sampleHead({ facts: { maxInputSpeed: perMinute(100) } }) }) },
        speaks: true
      },
      { name: "fast enough", facts: { ...lineFacts(), core: sampleCore() }, speaks: false }
    ]
  },
  {
    id: "drive-reverses",
    topic: "torque",
    title: "A visit that goes both ways needs a drive that reverses",
    scope: "part",
    severity: "refusal",
    source: PRACTICE9,
    speaksOf: ["strokes", "drive"],
    speaks: ({ part, duty }) => part.role === "drive" && !part.facts.reversible && duty.strokes > 1,
    sentence: ({ part, line, duty }) => `${line.tag} is stroked ${duty.strokes} times; ${part.name} ${part.number} turns one way only.`,
    examples: () => [
      { name: "one way", facts: { ...lineFacts(), part: sampleDrive({ facts: { reversible: false } }) }, speaks: true },
      {
        name: "one stroke",
        facts: { ...lineFacts({ duty: { strokes: 1 } }), part: sampleDrive({ facts: { reversible: false } }) },
        speaks: false
      }
    ]
  },
  {
    id: "direction-unknown",
    topic: "torque",
    title: "A closing direction that nobody gave is tried gently first",
    scope: "line",
    severity: "warning",
    source: PRACTICE9,
    speaksOf: ["closes"],
    speaks: ({ duty }) => duty.closes === "unknown",
    sentence: ({ line }) => `${line.tag}: nobody says which way it closes. Try by hand, a quarter turn each way, before the drive goes on; never take clockwise for granted.`,
    examples: () => [
      { name: "unknown", facts: lineFacts({ duty: { closes: "unknown" } }), speaks: true },
      { name: "known", facts: lineFacts(), speaks: false }
    ]
  },
  {
    id: "stem-overhauls",
    topic: "torque",
    title: "A drive never comes off a stem that may turn back by itself",
    scope: "line",
    severity: "warning",
    source: "Self-locking of power screws: Shigley\u2019s Mechanical Engineering Design, chapter 8, from memory",
    speaksOf: ["stem_thread"],
    speaks: ({ duty }) => duty.thread !== null && duty.thread.selfLocking !== "yes",
    sentence: ({ line, duty }) => `${line.tag}: the thread ${duty.thread?.selfLocking === "no" ? "does not lock itself" : "may not lock itself"}: hold the wheel before the drive comes off, and never take the drive off under load.`,
    examples: () => {
      const thread = { meanDiameter: stated("m", 0.03), lead: stated("m", 0.02) };
      return [
        { name: "not locking", facts: lineFacts({ duty: { thread: { ...thread, selfLocking: "no" } } }), speaks: true },
        { name: "locking", facts: lineFacts({ duty: { thread: { ...thread, selfLocking: "yes" } } }), speaks: false }
      ];
    }
  },
  {
    id: "rests-between",
    topic: "torque",
    title: "A drive rests after its longest run",
    scope: "core",
    severity: "note",
    source: "The part\u2019s own rating",
    speaksOf: ["turns", "drive"],
    speaks: ({ core }) => core.figures.runTime > core.drive.facts.continuousRun,
    sentence: ({ line, core }) => `${line.tag} takes ${sayMinutes(core.figures.runTime)} of running; ${core.drive.number} rests for ${sayMinutes(core.drive.facts.restAfterRun)} after each ${sayMinutes(core.drive.facts.continuousRun)}. The time planned holds the rests.`,
    examples: () => [
      {
        name: "long",
        facts: { ...lineFacts(), core: sampleCore({ figures: { runTime: seconds(4e3) } }) },
        speaks: true
      },
      { name: "short", facts: { ...lineFacts(), core: sampleCore() }, speaks: false }
    ]
  },
  {
    id: "drive-temperature",
    topic: "place",
    title: "The drive works at the temperature of the place",
    scope: "part",
    severity: "refusal",
    source: "The part\u2019s own rating",
    speaksOf: ["temperature", "drive"],
    speaks: ({ part, site }) => part.role === "drive" && site.temperature !== void 0 && (site.temperature.low < part.facts.lowestTemperature || site.temperature.high > part.facts.highestTemperature),
    sentence: ({ part, site }) => {
      const range = part.role === "drive" ? `${part.facts.lowestTemperature} to ${part.facts.highestTemperature} \xB0C` : "";
      return `The site has ${site.temperature?.low ?? 0} to ${site.temperature?.high ?? 0} \xB0C; ${part.name} ${part.number} works at ${range}.`;
    },
    examples: () => {
      const cold = lineFacts({ site: { temperature: ranged("\xB0C", -25, -5) } });
      return [
        { name: "too cold", facts: { ...cold, part: sampleDrive() }, speaks: true },
        {
          name: "made for it",
          facts: { ...cold, part: sampleDrive({ facts: { lowestTemperature: celsius(-40) } }) },
          speaks: false
        }
      ];
    }
  },
  {
    id: "drive-altitude",
    topic: "place",
    title: "The drive works at the altitude of the place",
    scope: "part",
    severity: "refusal",
    source: "The part\u2019s own rating",
    speaksOf: ["altitude", "drive"],
    speaks: ({ part, site }) => part.role === "drive" && (site.altitude?.high ?? 0) > part.facts.highestAltitude,
    sentence: ({ part, site }) => `The site lies at ${sayLength(site.altitude?.high ?? 0)}; ${part.name} ${part.number} works up to ${sayLength(part.role === "drive" ? part.facts.highestAltitude : 0)}.`,
    examples: () => {
      const high = lineFacts({ site: { altitude: stated("m", 3500) } });
      return [
        { name: "too high", facts: { ...high, part: sampleDrive() }, speaks: true },
        {
          name: "made for it",
          facts: { ...high, part: sampleDrive({ facts: { highestAltitude: metres(4e3) } }) },
          speaks: false
        }
      ];
    }
  },
  {
    id: "air-pressure-at-tool",
    topic: "place",
    title: "The tool gets the pressure it needs",
    scope: "core",
    severity: "refusal",
    source: "The part\u2019s own rating",
    speaksOf: ["air_pressure", "drive"],
    speaks: ({ core }) => core.drive.facts.power.kind === "air" && core.figures.supplyShare * core.drive.facts.power.ratedPressure < core.drive.facts.power.lowestPressure,
    sentence: ({ core, site }) => `The site gives ${sayPlain((site.airPressure?.low ?? 0) / 1e5)} bar; after its hose ${core.drive.number} would get less than the ${sayPlain(core.drive.facts.power.kind === "air" ? core.drive.facts.power.lowestPressure / 1e5 : 0)} bar it needs.`,
    examples: () => {
      const air = sampleDrive({ facts: { power: SAMPLE_AIR } });
      return [
        {
          name: "too little",
          facts: {
            ...lineFacts(),
            core: sampleCore({ drive: air, gear: SAMPLE_GEAR, figures: { supplyShare: ratio(0.5) } })
          },
          speaks: true
        },
        {
          name: "enough",
          facts: { ...lineFacts(), core: sampleCore({ drive: air, figures: { supplyShare: ratio(1) } }) },
          speaks: false
        }
      ];
    }
  }
];

// lib/rules/stem.ts
var PRACTICE10 = "common practice, no source";
var rises = ({ duty }) => duty.grip.stemRisesThroughWheel !== "no";
var stemDiameter = ({ duty }) => duty.grip.stemDiameter?.high ?? 0;
var protrusion2 = ({ duty }) => duty.grip.stemProtrusion?.high ?? duty.grip.travel?.high ?? 0;
function passes(bore, facts) {
  return bore !== void 0 && bore >= stemDiameter(facts);
}
function headClears(facts) {
  const { kind, bore, boreDepth } = facts.core.head.facts;
  return kind === "open-centre" && passes(bore, facts) && (boreDepth === void 0 || boreDepth >= protrusion2(facts));
}
function extensionSwallows(facts) {
  const tubes = facts.extensions.filter((extension) => passes(extension.facts.bore, facts));
  return tubes.length > 0 && tubes.reduce((sum, tube) => sum + tube.facts.length.low, 0) >= protrusion2(facts);
}
var RISING = sampleGrip({
  stemRisesThroughWheel: "yes",
  stemDiameter: stated("m", 0.036),
  stemProtrusion: stated("m", 0.4)
});
var risingLine = () => lineFacts({ duty: { grip: RISING } });
var STEM_RULES = [
  {
    id: "stem-bent",
    topic: "stem",
    title: "A bent stem is not turned under power",
    scope: "line",
    severity: "refusal",
    source: PRACTICE10,
    speaksOf: ["notes"],
    speaks: ({ line }) => /bent (stem|spindle)|(stem|spindle) (is )?bent/i.test(line.notes ?? ""),
    sentence: ({ line }) => `${line.tag}: the notes say that the stem is bent; a bent stem is not turned under power. Have it looked at first.`,
    examples: () => [
      { name: "bent in the notes", facts: lineFacts({ line: { notes: "Stem is bent, 2019" } }), speaks: true },
      { name: "no such note", facts: lineFacts({ line: { notes: "behind the shed" } }), speaks: false }
    ]
  },
  {
    id: "stem-clears-head",
    topic: "stem",
    title: "A rising stem needs an open-centre head, or a tubular extension that holds all of it",
    scope: "grip",
    severity: "refusal",
    source: PRACTICE10,
    speaksOf: ["stem", "stem_diameter", "stem_protrusion", "head", "extension"],
    speaks: (facts) => rises(facts) && !headClears(facts) && !extensionSwallows(facts),
    sentence: (facts) => {
      const { head } = facts.core;
      const bore = head.facts.bore === void 0 ? "no through bore" : `a bore of ${sayLength(head.facts.bore)}`;
      const depth = head.facts.boreDepth === void 0 ? "" : ` and takes ${sayLength(head.facts.boreDepth)} of stem`;
      return `${facts.line.tag}: the stem (${sayLength(stemDiameter(facts))}) stands up to ${sayLength(protrusion2(facts))} through the wheel; head ${head.number} is ${head.facts.kind} with ${bore}${depth}, and no tubular extension holds the stem.`;
    },
    examples: () => {
      const open = { ...risingLine(), extensions: [], adapter: sampleWheelAdapter() };
      const inline = sampleCore({ head: sampleHead({ facts: { kind: "inline" } }) });
      const tube = sampleShaft({ facts: { bore: metres(0.05), length: { low: metres(0.5), high: metres(0.5) } } });
      const shallow = sampleCore({ head: sampleHead({ facts: { boreDepth: metres(0.2) } }) });
      return [
        { name: "open centre", facts: { ...open, core: sampleCore() }, speaks: false },
        { name: "inline head", facts: { ...open, core: inline }, speaks: true },
        { name: "inline head over a tube", facts: { ...open, core: inline, extensions: [tube] }, speaks: false },
        { name: "bore too shallow", facts: { ...open, core: shallow }, speaks: true }
      ];
    }
  },
  {
    id: "stem-clears-adapter",
    topic: "stem",
    title: "A rising stem must pass the adapter",
    scope: "part",
    severity: "refusal",
    source: PRACTICE10,
    speaksOf: ["stem", "stem_diameter", "adapter"],
    speaks: (facts) => facts.part.role === "adapter" && rises(facts) && !passes(facts.part.facts.bore, facts),
    sentence: (facts) => `${facts.line.tag}: the stem (${sayLength(stemDiameter(facts))}) rises through the wheel and does not pass ${facts.part.name} ${facts.part.number}.`,
    examples: () => [
      { name: "bore is wide enough", facts: { ...risingLine(), part: sampleWheelAdapter() }, speaks: false },
      {
        name: "bore is too small",
        facts: { ...risingLine(), part: sampleWheelAdapter({ facts: { bore: metres(0.03) } }) },
        speaks: true
      }
    ]
  },
  {
    id: "stem-no-solid-shaft",
    topic: "stem",
    title: "No solid shaft where the stem must pass",
    scope: "part",
    severity: "refusal",
    source: PRACTICE10,
    speaksOf: ["stem", "stem_diameter", "extension"],
    speaks: (facts) => facts.part.role === "extension" && rises(facts) && !passes(facts.part.facts.bore, facts),
    sentence: (facts) => `${facts.line.tag}: the stem rises through the wheel, and ${facts.part.name} ${facts.part.number} leaves it no room.`,
    examples: () => [
      { name: "solid shaft", facts: { ...risingLine(), part: sampleShaft() }, speaks: true },
      { name: "tube", facts: { ...risingLine(), part: sampleShaft({ facts: { bore: metres(0.05) } }) }, speaks: false }
    ]
  },
  {
    id: "stem-clears-options",
    topic: "stem",
    title: "A rising stem must pass what sits between head and adapter",
    scope: "core",
    severity: "refusal",
    source: PRACTICE10,
    speaksOf: ["stem", "stem_diameter", "option"],
    speaks: (facts) => rises(facts) && [facts.core.limiter, facts.core.counter].some(
      (option) => option !== null && option.facts.sits === "after head" && !passes(option.facts.bore, facts)
    ),
    sentence: (facts) => `${facts.line.tag}: the stem rises through the wheel and does not pass the option that sits under the head.`,
    examples: () => [
      {
        name: "counter under the head without a bore",
        facts: { ...risingLine(), core: sampleCore({ counter: sampleCounter({ facts: { sits: "after head" } }) }) },
        speaks: true
      },
      {
        name: "clip-on counter",
        facts: { ...risingLine(), core: sampleCore({ counter: sampleCounter() }) },
        speaks: false
      }
    ]
  },
  {
    id: "stem-cover-off",
    topic: "stem",
    title: "A cover tube or indicator comes off first",
    scope: "line",
    severity: "warning",
    source: PRACTICE10,
    speaksOf: ["stem_cover"],
    speaks: ({ line }) => line.interface.stemCover?.value === true,
    sentence: ({ line }) => `${line.tag}: take the stem cover or indicator off before the head goes on, and put it back after.`,
    examples: () => [
      { name: "with cover", facts: lineFacts({ line: { interface: { stemCover: said(true) } } }), speaks: true },
      { name: "without", facts: lineFacts(), speaks: false }
    ]
  },
  {
    id: "stem-protrusion-measured",
    topic: "stem",
    title: "Protrusion is asked with the position it was measured in",
    scope: "line",
    severity: "warning",
    source: PRACTICE10,
    speaksOf: ["stem_protrusion", "protrusion_measured_at"],
    speaks: (facts) => rises(facts) && (facts.duty.grip.stemProtrusion === void 0 || !["measured", "stated", "computed"].includes(facts.duty.grip.stemProtrusion.basis)),
    sentence: (facts) => `${facts.line.tag}: how far the stem stands through the wheel is not known; up to ${sayLength(protrusion2(facts))} is planned for. Measure it, and say whether the valve was open or closed.`,
    examples: () => [
      {
        name: "assumed",
        facts: lineFacts({ duty: { grip: { ...RISING, stemProtrusion: ranged("m", 0.1, 0.4) } } }),
        speaks: true
      },
      { name: "stated", facts: risingLine(), speaks: false }
    ]
  },
  {
    id: "stem-may-rise",
    topic: "stem",
    title: "A stem that may rise is planned as one that does",
    scope: "line",
    severity: "note",
    source: PRACTICE10,
    speaksOf: ["stem"],
    speaks: ({ duty }) => duty.grip.stemRisesThroughWheel === "maybe",
    sentence: ({ line }) => `${line.tag}: nobody says whether the stem rises through the wheel; the equipment leaves room for it.`,
    examples: () => [
      {
        name: "maybe",
        facts: lineFacts({ duty: { grip: { ...RISING, stemRisesThroughWheel: "maybe" } } }),
        speaks: true
      },
      { name: "yes", facts: risingLine(), speaks: false }
    ]
  }
];

// lib/rules/torque.ts
var DESIGN = "Limiter window and chain factors: definitions; margins are common practice, no source";
var RATING2 = "The part\u2019s own rating";
var ways = (core) => [core.figures.opening, core.figures.closing];
function hardest(core) {
  const { opening, closing } = core.figures;
  return closing.needed - closing.sure > opening.needed - opening.sure ? closing : opening;
}
var LIMITER = {
  lowest: newtonMetres(10),
  highest: newtonMetres(120),
  error: ratio(0.1),
  overshoot: newtonMetres(2),
  step: newtonMetres(2),
  bothDirections: true,
  factor: { low: ratio(3.2), high: ratio(3.6) },
  number: "SL-1"
};
var limited = (ceiling, sure) => {
  const way = sampleCoreDirection({
    ceiling: ceiling === null ? null : newtonMetres(ceiling),
    sure: newtonMetres(sure)
  });
  const figures = { limiterRequired: true, limiter: LIMITER, opening: way, closing: way };
  return sampleCore({ limiter: sampleLimiter(), figures });
};
var gripOf3 = (change) => ({
  ...lineFacts(),
  core: sampleCore(),
  extensions: [],
  adapter: sampleWheelAdapter(),
  ...change
});
var TORQUE_RULES = [
  {
    id: "start-below-never-exceed",
    topic: "torque",
    title: "Even the lowest starting torque must be below what the valve must never see",
    scope: "line",
    severity: "refusal",
    source: DESIGN,
    speaksOf: ["starting_torque", "max_torque"],
    speaks: ({ duty }) => [duty.opening, duty.closing].some((way) => way.starting.low > way.neverExceed.torque.high),
    sentence: ({ line, duty }) => {
      const way = duty.opening.starting.low > duty.opening.neverExceed.torque.high ? duty.opening : duty.closing;
      return `${line.tag} needs at least ${sayTorque(way.starting.low)} to move and must never see more than ${sayTorque(way.neverExceed.torque.high)} (${way.neverExceed.kind}): power would break it.`;
    },
    examples: () => {
      const weak = sampleDirection({
        neverExceed: { kind: "stem torsion", directions: ["opening"], torque: stated("N\xB7m", 120) }
      });
      return [
        { name: "stem breaks first", facts: lineFacts({ duty: { opening: weak } }), speaks: true },
        { name: "room between", facts: lineFacts(), speaks: false }
      ];
    }
  },
  {
    id: "window-narrow",
    topic: "torque",
    title: "It may not move at the torque allowed",
    scope: "line",
    severity: "warning",
    source: DESIGN,
    speaksOf: ["starting_torque", "max_torque"],
    speaks: ({ duty }) => [duty.opening, duty.closing].some(
      (way) => way.limiter === null && way.starting.low <= way.neverExceed.torque.high
    ),
    sentence: ({ line, duty }) => {
      const way = duty.opening.limiter === null ? duty.opening : duty.closing;
      return `${line.tag} may need ${sayTorque(way.starting.high)} to move and must never see more than ${sayTorque(way.neverExceed.torque.low)} (${way.neverExceed.kind}): it may not move at the torque allowed. Agree before hire what happens then.`;
    },
    examples: () => [
      {
        name: "empty window",
        facts: lineFacts({ duty: { opening: sampleDirection({ limiter: null }) } }),
        speaks: true
      },
      { name: "open window", facts: lineFacts(), speaks: false }
    ]
  },
  {
    id: "drive-reaches-torque",
    topic: "torque",
    title: "The chain surely gives the torque that the line asks for",
    scope: "core",
    severity: "refusal",
    source: DESIGN,
    speaksOf: ["starting_torque", "drive", "head"],
    speaks: ({ core }) => core.figures.limiter === null && ways(core).some((way) => way.sure < way.needed - 1e-9),
    sentence: ({ line, core }) => `${line.tag} asks for ${sayTorque(hardest(core).needed)}; ${core.drive.number} in gear \u201C${core.gear.name}\u201D with ${core.head.number} surely gives ${sayTorque(hardest(core).sure)}.`,
    examples: () => [
      { name: "strong enough", facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
      {
        name: "too weak",
        facts: {
          ...lineFacts(),
          core: sampleCore({ figures: { closing: sampleCoreDirection({ sure: newtonMetres(120) }) } })
        },
        speaks: true
      }
    ]
  },
  {
    id: "drive-runs-at-torque",
    topic: "torque",
    title: "The drive may run at the running torque for as long as it takes",
    scope: "core",
    severity: "refusal",
    source: RATING2,
    speaksOf: ["running_torque", "drive", "head"],
    speaks: ({ core, duty }) => core.figures.sureAtValve < Math.max(duty.opening.running.nominal, duty.closing.running.nominal) - 1e-9,
    sentence: ({ line, core, duty }) => `${line.tag} runs at about ${sayTorque(Math.max(duty.opening.running.nominal, duty.closing.running.nominal))}; ${core.drive.number} in gear \u201C${core.gear.name}\u201D with ${core.head.number} may run at ${sayTorque(core.figures.sureAtValve)}.`,
    examples: () => [
      { name: "within rating", facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
      {
        name: "beyond rating",
        facts: { ...lineFacts(), core: sampleCore({ figures: { sureAtValve: newtonMetres(60) } }) },
        speaks: true
      }
    ]
  },
  {
    id: "drive-misses-high-end",
    topic: "torque",
    title: "The highest torque that the line may need is not covered",
    scope: "core",
    severity: "warning",
    source: DESIGN,
    speaksOf: ["starting_torque", "drive", "head"],
    speaks: ({ core, duty }) => core.figures.opening.sure < duty.opening.starting.high || core.figures.closing.sure < duty.closing.starting.high,
    sentence: ({ line, core, duty }) => `${line.tag} may need up to ${sayTorque(Math.max(duty.opening.starting.high, duty.closing.starting.high))}; this chain surely gives ${sayTorque(Math.min(core.figures.opening.sure, core.figures.closing.sure))}. Measuring the torque first tells whether that is enough.`,
    examples: () => [
      {
        name: "wide range",
        facts: {
          ...lineFacts({ duty: { opening: sampleDirection({ starting: ranged("N\xB7m", 100, 300) }) } }),
          core: sampleCore()
        },
        speaks: true
      },
      { name: "covered", facts: { ...lineFacts(), core: sampleCore() }, speaks: false }
    ]
  },
  {
    id: "limiter-required",
    topic: "torque",
    title: "A limiter where the drive could pass what the valve must never see, or that is only a guess",
    scope: "core",
    severity: "refusal",
    source: DESIGN,
    speaksOf: ["max_torque", "drive", "option"],
    speaks: ({ core }) => core.figures.limiterRequired && core.figures.limiter === null,
    sentence: ({ line, core }) => `${line.tag} must never see more than ${sayTorque(core.figures.neverExceed)}, and ${core.drive.number} with ${core.head.number} stalls at up to ${sayTorque(core.figures.stallAtValve)}: a torque limiter is required.`,
    examples: () => [
      {
        name: "none",
        facts: { ...lineFacts(), core: sampleCore({ figures: { limiterRequired: true } }) },
        speaks: true
      },
      { name: "not required", facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
      { name: "there", facts: { ...lineFacts(), core: limited(70, 200) }, speaks: false }
    ]
  },
  {
    id: "limiter-low-enough",
    topic: "torque",
    title: "The limiter\u2019s scale starts below what the valve must never see",
    scope: "core",
    severity: "refusal",
    source: DESIGN,
    speaksOf: ["max_torque", "option"],
    speaks: ({ core }) => core.figures.limiterRequired && core.figures.limiter !== null && ways(core).some((way) => way.ceiling === null),
    sentence: ({ line, core }) => {
      const limiter = core.figures.limiter;
      const lowest = limiter === null ? 0 : (limiter.lowest * (1 + limiter.error) + limiter.overshoot) * limiter.factor.high;
      return `${line.tag} must never see more than ${sayTorque(core.figures.neverExceed)}; the lowest setting of ${limiter?.number ?? "the limiter"} may bring ${sayTorque(lowest)} to it.`;
    },
    examples: () => [
      { name: "scale starts too high", facts: { ...lineFacts(), core: limited(null, 0) }, speaks: true },
      { name: "fits", facts: { ...lineFacts(), core: limited(70, 200) }, speaks: false }
    ]
  },
  {
    id: "limiter-reaches-torque",
    topic: "torque",
    title: "With the limiter at its ceiling the chain still gives what the line asks for",
    scope: "core",
    severity: "refusal",
    source: DESIGN,
    speaksOf: ["starting_torque", "option", "drive", "head"],
    speaks: ({ core }) => core.figures.limiter !== null && ways(core).some((way) => way.sure < way.needed - 1e-9),
    sentence: ({ line, core }) => `${line.tag} asks for ${sayTorque(hardest(core).needed)}; ${core.drive.number} with ${core.head.number} and limiter ${core.figures.limiter?.number ?? ""} surely gives ${sayTorque(hardest(core).sure)}.`,
    examples: () => [
      { name: "reaches", facts: { ...lineFacts(), core: limited(70, 200) }, speaks: false },
      { name: "trips first", facts: { ...lineFacts(), core: limited(40, 110) }, speaks: true }
    ]
  },
  {
    id: "limiter-both-ways",
    topic: "torque",
    title: "A required limiter limits both directions",
    scope: "core",
    severity: "refusal",
    source: DESIGN,
    speaksOf: ["option", "drive"],
    speaks: ({ core }) => core.figures.limiterRequired && core.figures.limiter !== null && !core.figures.limiter.bothDirections,
    sentence: ({ line, core }) => `${line.tag} needs a limit both ways; ${core.figures.limiter?.number ?? "the limiter"} limits one way only.`,
    examples: () => {
      const oneWay = sampleCore({ figures: { limiterRequired: true, limiter: { ...LIMITER, bothDirections: false } } });
      return [
        { name: "one way", facts: { ...lineFacts(), core: oneWay }, speaks: true },
        { name: "both", facts: { ...lineFacts(), core: limited(70, 200) }, speaks: false }
      ];
    }
  },
  {
    id: "head-carries-torque",
    topic: "torque",
    title: "The head carries the highest torque that the chain can bring",
    scope: "core",
    severity: "refusal",
    source: RATING2,
    speaksOf: ["head", "drive"],
    speaks: ({ core }) => core.figures.highestAtValve > core.head.facts.torqueRating + 1e-9,
    sentence: ({ core }) => `Head ${core.head.number} carries ${sayTorque(core.head.facts.torqueRating)}; ${core.drive.number} can bring ${sayTorque(core.figures.highestAtValve)} to its output.`,
    examples: () => [
      { name: "carries", facts: { ...lineFacts(), core: sampleCore() }, speaks: false },
      {
        name: "weak head",
        facts: {
          ...lineFacts(),
          core: sampleCore({ head: sampleHead({ facts: { torqueRating: newtonMetres(300) } }) })
        },
        speaks: true
      }
    ]
  },
  {
    id: "adapter-carries-torque",
    topic: "torque",
    title: "The adapter carries the highest torque that the chain can bring",
    scope: "grip",
    severity: "refusal",
    source: RATING2,
    speaksOf: ["adapter", "drive", "head"],
    speaks: ({ core, adapter }) => core.figures.highestAtValve > adapter.facts.torqueRating + 1e-9,
    sentence: ({ core, adapter }) => `${adapter.name} ${adapter.number} carries ${sayTorque(adapter.facts.torqueRating)}; ${core.drive.number} with ${core.head.number} can bring ${sayTorque(core.figures.highestAtValve)}.`,
    examples: () => [
      { name: "carries", facts: gripOf3({}), speaks: false },
      {
        name: "weak adapter",
        facts: gripOf3({ adapter: sampleWheelAdapter({ facts: { torqueRating: newtonMetres(200) } }) }),
        speaks: true
      }
    ]
  },
  {
    id: "extension-carries-torque",
    topic: "torque",
    title: "Every extension carries the highest torque that the chain can bring",
    scope: "grip",
    severity: "refusal",
    source: RATING2,
    speaksOf: ["extension", "drive", "head"],
    speaks: ({ core, extensions }) => extensions.some((extension) => core.figures.highestAtValve > extension.facts.torqueRating + 1e-9),
    sentence: ({ core, extensions }) => {
      const weakest2 = extensions.toSorted((a, b) => a.facts.torqueRating - b.facts.torqueRating)[0];
      return `${weakest2?.name ?? "Extension"} ${weakest2?.number ?? ""} carries ${sayTorque(weakest2?.facts.torqueRating ?? 0)}; ${core.drive.number} with ${core.head.number} can bring ${sayTorque(core.figures.highestAtValve)}.`;
    },
    examples: () => [
      { name: "carries", facts: gripOf3({ extensions: [sampleShaft()] }), speaks: false },
      {
        name: "weak shaft",
        facts: gripOf3({ extensions: [sampleShaft({ facts: { torqueRating: newtonMetres(200) } })] }),
        speaks: true
      }
    ]
  }
];

// lib/rules/wheel.ts
var PRACTICE11 = "common practice, no source";
function both2(facts) {
  const grip = facts.adapter.facts.wheel;
  return grip === void 0 || facts.gripCase.kind !== "wheel" ? null : { grip, wheel: facts.gripCase };
}
var tellAdapter = (adapter) => `${adapter.name} ${adapter.number}`;
var onWheel = (change = {}, adapter = sampleWheelAdapter()) => ({
  ...lineFacts(),
  adapter,
  extensions: [],
  gripCase: { kind: "wheel", diameter_m: 0.4, spokes: 4, dish_deg: 0, ...change }
});
var WHEEL_RULES = [
  {
    id: "grip-nothing",
    topic: "wheel",
    title: "There must be something to grip",
    scope: "line",
    severity: "refusal",
    source: PRACTICE11,
    speaksOf: ["driven_by"],
    speaks: ({ duty }) => duty.grip.kind === "none",
    sentence: ({ line, duty }) => `${line.tag}: there is nothing that an adapter can grip${duty.grip.remark === void 0 ? "" : ` (${duty.grip.remark})`}; the Desk looks at it.`,
    examples: () => [
      { name: "nothing", facts: lineFacts({ duty: { grip: sampleGrip({ kind: "none" }) } }), speaks: true },
      { name: "a wheel", facts: lineFacts(), speaks: false }
    ]
  },
  {
    id: "grip-kind-of-adapter",
    topic: "wheel",
    title: "A wheel needs a wheel-side adapter, a nut a nut-side one",
    scope: "part",
    severity: "refusal",
    source: PRACTICE11,
    speaksOf: ["driven_by", "adapter"],
    speaks: ({ part, duty }) => part.role === "adapter" && (duty.grip.kind === "wheel" && part.facts.wheel === void 0 || duty.grip.kind === "nut" && part.facts.sockets === void 0),
    sentence: ({ part, line, duty }) => `${line.tag} is turned by a ${duty.grip.kind}; ${part.name} ${part.number} does not grip one.`,
    examples: () => [
      { name: "key on a wheel", facts: { ...lineFacts(), part: sampleKey() }, speaks: true },
      { name: "peg plate on a wheel", facts: { ...lineFacts(), part: sampleWheelAdapter() }, speaks: false },
      {
        name: "peg plate on a nut",
        facts: { ...lineFacts({ duty: { grip: SAMPLE_NUT } }), part: sampleWheelAdapter() },
        speaks: true
      }
    ]
  },
  {
    id: "wheel-diameter-within-adapter",
    topic: "wheel",
    title: "The wheel is within the diameters that the adapter takes",
    scope: "case",
    severity: "refusal",
    source: PRACTICE11,
    speaksOf: ["wheel_diameter", "adapter"],
    speaks: (facts) => {
      const on = both2(facts);
      if (on === null) return false;
      return on.wheel.diameter_m < on.grip.diameter.low - 1e-9 || on.wheel.diameter_m > on.grip.diameter.high + 1e-9;
    },
    sentence: (facts) => {
      const on = both2(facts);
      if (on === null) return "";
      return `${facts.line.tag}: a wheel of ${sayLength(on.wheel.diameter_m)} is outside the ${sayLength(on.grip.diameter.low)} to ${sayLength(on.grip.diameter.high)} of ${tellAdapter(facts.adapter)}.`;
    },
    examples: () => [
      { name: "inside", facts: onWheel(), speaks: false },
      { name: "at the very edge", facts: onWheel({ diameter_m: 0.5 }), speaks: false },
      { name: "too large", facts: onWheel({ diameter_m: 0.6 }), speaks: true },
      { name: "too small", facts: onWheel({ diameter_m: 0.2 }), speaks: true }
    ]
  },
  {
    id: "wheel-spokes-within-adapter",
    topic: "wheel",
    title: "The wheel has a number of spokes that the adapter takes",
    scope: "case",
    severity: "refusal",
    source: PRACTICE11,
    speaksOf: ["wheel_spokes", "adapter"],
    speaks: (facts) => {
      const on = both2(facts);
      if (on === null || on.wheel.spokes === null) return false;
      return on.wheel.spokes < on.grip.spokes.low || on.wheel.spokes > on.grip.spokes.high;
    },
    sentence: (facts) => {
      const on = both2(facts);
      if (on === null) return "";
      return `${facts.line.tag}: a wheel with ${on.wheel.spokes ?? "an unknown number of"} spokes is outside the ${on.grip.spokes.low} to ${on.grip.spokes.high} of ${tellAdapter(facts.adapter)}.`;
    },
    examples: () => [
      { name: "four spokes", facts: onWheel(), speaks: false },
      { name: "unknown", facts: onWheel({ spokes: null }), speaks: false },
      { name: "solid disc", facts: onWheel({ spokes: 0 }), speaks: true },
      { name: "eight spokes", facts: onWheel({ spokes: 8 }), speaks: true }
    ]
  },
  {
    id: "wheel-dish-within-adapter",
    topic: "wheel",
    title: "The rim stands no further from the hub than the adapter follows",
    scope: "case",
    severity: "refusal",
    source: PRACTICE11,
    speaksOf: ["wheel_dish", "adapter"],
    speaks: (facts) => {
      const on = both2(facts);
      return on !== null && on.wheel.dish_deg > on.grip.dishUpTo + 1e-9;
    },
    sentence: (facts) => {
      const on = both2(facts);
      if (on === null) return "";
      return `${facts.line.tag}: a rim dished by ${sayPlain(on.wheel.dish_deg)}\xB0 is more than the ${sayPlain(on.grip.dishUpTo)}\xB0 of ${tellAdapter(facts.adapter)}.`;
    },
    examples: () => [
      { name: "flat", facts: onWheel(), speaks: false },
      { name: "dished", facts: onWheel({ dish_deg: 15 }), speaks: true },
      {
        name: "dished, adapter follows",
        facts: onWheel(
          { dish_deg: 15 },
          sampleWheelAdapter({
            facts: {
              wheel: {
                diameter: { low: metres(0.3), high: metres(0.6) },
                spokes: { low: 3, high: 6 },
                dishUpTo: degrees(30),
                rimUpTo: metres(0.04)
              }
            }
          })
        ),
        speaks: false
      }
    ]
  },
  {
    id: "wheel-spinner-off",
    topic: "wheel",
    title: "A spinner handle or knob comes off first",
    scope: "line",
    severity: "note",
    source: PRACTICE11,
    speaksOf: ["notes"],
    speaks: ({ line }) => /spinner|crank handle|knob/i.test(line.notes ?? ""),
    sentence: ({ line }) => `${line.tag}: take the spinner or knob off the rim before the adapter goes on.`,
    examples: () => [
      { name: "spinner", facts: lineFacts({ line: { notes: "wheel with spinner" } }), speaks: true },
      { name: "none", facts: lineFacts(), speaks: false }
    ]
  },
  {
    id: "wheel-brittle-spokes",
    topic: "wheel",
    title: "A spoke driver on a cast-iron wheel goes up in small steps",
    scope: "part",
    severity: "warning",
    source: PRACTICE11,
    speaksOf: ["wheel_material", "adapter"],
    speaks: ({ part, line }) => part.role === "adapter" && part.facts.kind === "spoke driver" && /cast|grey|gray/i.test(line.interface.wheelMaterial?.value ?? ""),
    sentence: ({ part, line }) => `${line.tag}: the wheel is cast iron and ${part.name} ${part.number} pushes on single spokes: look for cracks, go up in the smallest steps.`,
    examples: () => [
      {
        name: "cast iron",
        facts: {
          ...lineFacts({ line: { interface: { wheelMaterial: said("cast iron") } } }),
          part: sampleWheelAdapter({ facts: { kind: "spoke driver" } })
        },
        speaks: true
      },
      {
        name: "not said",
        facts: { ...lineFacts(), part: sampleWheelAdapter({ facts: { kind: "spoke driver" } }) },
        speaks: false
      }
    ]
  },
  {
    id: "wheel-plate-stays",
    topic: "wheel",
    title: "A bolt-on plate stays on the wheel while the valve is worked",
    scope: "part",
    severity: "note",
    source: PRACTICE11,
    speaksOf: ["adapter"],
    speaks: ({ part }) => part.role === "adapter" && part.facts.staysOnWheel,
    sentence: ({ part, line }) => `${line.tag}: ${part.name} ${part.number} is bolted to the wheel and stays on for all strokes of the visit; take it off before leaving.`,
    examples: () => [
      {
        name: "stays",
        facts: { ...lineFacts(), part: sampleWheelAdapter({ facts: { staysOnWheel: true } }) },
        speaks: true
      },
      { name: "does not", facts: { ...lineFacts(), part: sampleWheelAdapter() }, speaks: false }
    ]
  }
];

// lib/rules/all-rules.ts
var RULES = [
  ...STEM_RULES,
  ...WHEEL_RULES,
  ...NO_WHEEL_RULES,
  ...BURIED_RULES,
  ...REACH_RULES,
  ...TORQUE_RULES,
  ...SPEED_RULES,
  ...RESTRAINT_RULES,
  ...RESTRAINT_SITE_RULES,
  ...PLACE_RULES,
  ...METHOD_RULES,
  ...COUNTING_RULES,
  ...PEOPLE_RULES,
  ...HOUSE_RULES,
  ...COUPLING_RULES
];
var RULES_OF = {
  line: RULES.filter((rule) => rule.scope === "line"),
  part: RULES.filter((rule) => rule.scope === "part"),
  link: RULES.filter((rule) => rule.scope === "link"),
  case: RULES.filter((rule) => rule.scope === "case"),
  pair: RULES.filter((rule) => rule.scope === "pair"),
  core: RULES.filter((rule) => rule.scope === "core"),
  grip: RULES.filter((rule) => rule.scope === "grip"),
  reaction: RULES.filter((rule) => rule.scope === "reaction"),
  whole: RULES.filter((rule) => rule.scope === "whole")
};

// lib/kits/refusals.ts
var refuses = (rule) => rule.severity === "refusal";
var ALL_REFUSALS = {
  line: RULES_OF.line.filter(refuses),
  part: RULES_OF.part.filter(refuses),
  link: RULES_OF.link.filter(refuses),
  case: RULES_OF.case.filter(refuses),
  core: RULES_OF.core.filter(refuses),
  grip: RULES_OF.grip.filter(refuses),
  reaction: RULES_OF.reaction.filter(refuses)
};
var newTally = () => ({ evaluations: 0, cores: 0, pairs: 0 });
function isAllowed(rules, facts, tally) {
  for (const rule of rules) {
    tally.evaluations += 1;
    if (rule.speaks(facts)) return false;
  }
  return true;
}

// lib/kits/grip-elements.ts
function gripElements(input) {
  const { facts, refusals, tally } = input;
  const { line, duty, site, place } = facts;
  const linkRules = refusals.link.filter(({ id }) => !LINK_OF_EXTENSIONS.has(id));
  const caseRules = {
    alone: refusals.case.filter(({ id }) => CASE_OF_ADAPTER.has(id)),
    rest: refusals.case.filter(({ id }) => !CASE_OF_ADAPTER.has(id))
  };
  const every = input.cases.map((_, index) => index);
  const chainsOf = chainsByEnd(input);
  return input.adapters.flatMap((adapter) => {
    const taken = (rules, among, extensions) => casesTaken({ input, adapter, extensions, rules, among });
    const alone = taken(caseRules.alone, every, []);
    const onWheel2 = duty.grip.kind === "wheel" ? taken(caseRules.rest, alone, []) : null;
    if (alone.length === 0 || onWheel2?.length === 0) return [];
    const wheelBits = onWheel2 === null ? null : bitsOf(onWheel2);
    const chains = chainsOf(adapter);
    const elements = chains.map(({ extensions }) => {
      if (!isAllowed(linkRules, { line, duty, site, place, adapter, extensions }, tally)) return null;
      const takes = wheelBits ?? bitsOf(taken(caseRules.rest, alone, extensions));
      if (takes === 0n) return null;
      return { adapter, extensions, input: extensions[0]?.facts.input ?? adapter.facts.input, takes };
    });
    return withoutNeedless({ elements, chains, facts });
  });
}
function chainsByEnd(input) {
  const { facts, refusals, tally } = input;
  const { line, duty, site, place } = facts;
  const free = lengthMatters(facts) || input.mustHold.length > 0;
  const rules = refusals.link.filter(({ id }) => LINK_OF_EXTENSIONS.has(id));
  const verdicts = /* @__PURE__ */ new Map();
  const passes2 = (extensions, adapter) => {
    const known2 = verdicts.get(extensions) ?? isAllowed(rules, { line, duty, site, place, adapter, extensions }, tally);
    verdicts.set(extensions, known2);
    return known2;
  };
  const ended = /* @__PURE__ */ new Map();
  return (adapter) => {
    const end = adapter.facts.input;
    const key = `${end.form} ${end.size} ${end.gender}`;
    const known2 = ended.get(key);
    if (known2 !== void 0) return known2;
    const chains = input.chains.filter(
      (extensions) => (free || extensions.length <= 1) && couples(extensions, adapter) && holds(extensions, input.mustHold) && passes2(extensions, adapter)
    );
    const figures = chains.map((extensions) => figuresOf(extensions, end));
    const made = chains.map((extensions, index) => {
      const longer2 = figures[index];
      const shorter = figures.flatMap((one2, at2) => longer2 !== void 0 && isAsGood(one2, longer2) ? [at2] : []);
      return { extensions, shorter };
    });
    ended.set(key, made);
    return made;
  };
}
function lengthMatters({ line, duty }) {
  return (line.place.reach?.high ?? 0) > ARMS_LENGTH_M || (duty.grip.depthToNut?.high ?? 0) > SHALLOW_M || (line.place.misalignment?.high ?? 0) > STRAIGHT_UP_TO_DEG || duty.grip.stemRisesThroughWheel !== "no";
}
var holds = (extensions, wanted) => wanted.every((number) => extensions.some((extension) => extension.number === number));
function couples(extensions, adapter) {
  const last = extensions.at(-1);
  return last === void 0 || joins(last.facts.output, adapter.facts.input);
}
function casesTaken(at2) {
  const { cases, tally } = at2.input;
  const { line, duty, site, place } = at2.input.facts;
  const { adapter, extensions, rules } = at2;
  return at2.among.filter((index) => {
    const gripCase = cases[index];
    return gripCase !== void 0 && isAllowed(rules, { line, duty, site, place, adapter, extensions, gripCase }, tally);
  });
}
function bitsOf(positions) {
  let bits = 0n;
  for (const position of positions) bits |= 1n << BigInt(position);
  return bits;
}
function withoutNeedless(at2) {
  const { elements, chains } = at2;
  const there = elements.filter((element) => element !== null);
  if (at2.facts.duty.grip.stemRisesThroughWheel !== "no") return there;
  return elements.flatMap((element, index) => {
    if (element === null) return [];
    const isNeedless = chains[index]?.shorter.some((position) => {
      const takes = elements[position]?.takes ?? 0n;
      return (takes & element.takes) === element.takes;
    });
    return isNeedless === true ? [] : [element];
  });
}
function figuresOf(extensions, end) {
  return {
    count: extensions.length,
    input: extensions[0]?.facts.input ?? end,
    weakest: Math.min(...extensions.map((extension) => extension.facts.torqueRating)),
    slowest: Math.min(...extensions.map((extension) => extension.facts.maxSpeed)),
    length: extensions.reduce((sum, extension) => sum + extension.facts.length.low, 0)
  };
}
function isAsGood(shorter, longer2) {
  return shorter.count < 2 && shorter.count < longer2.count && sameCoupling(shorter.input, longer2.input) && shorter.weakest >= longer2.weakest && shorter.slowest >= longer2.slowest && shorter.length <= longer2.length;
}
function sameCoupling(a, b) {
  return a.form === b.form && a.size === b.size && a.gender === b.gender;
}

// lib/kits/wishes.ts
function modelsLeft(models2, constraints2) {
  const out = new Set(constraints2.excludedParts);
  return out.size === 0 ? models2 : models2.filter((model) => !out.has(model.number));
}
function wishedIn(wishes, role) {
  const numbers = wishes.filter((model) => model.role === role).map((model) => model.number);
  return numbers.length === 0 ? null : new Set(numbers);
}

// lib/kits/conflict-table.ts
function brokenRules(rules, facts) {
  let broken = 0n;
  for (const [index, rule] of rules.entries()) if (rule.speaks(facts)) broken |= 1n << BigInt(index);
  return broken;
}
function conflictTable(question) {
  const { facts, stock } = question;
  const parts = /* @__PURE__ */ new Map();
  const part = (model) => {
    const known2 = parts.get(model.number) ?? brokenRules(ALL_REFUSALS.part, { ...facts, part: model });
    parts.set(model.number, known2);
    return known2;
  };
  const wanted = wishedIn(question.wishes, "restraint");
  const reactions = reactionsOf({
    restraints: stock.restraints.filter((restraint) => wanted?.has(restraint.number) ?? true),
    stock,
    facts
  });
  const cores = tableCores(question);
  const elements = tableElements(question);
  return {
    line: brokenRules(ALL_REFUSALS.line, facts),
    part,
    cores,
    elements,
    caseCount: elements[0]?.cases.length ?? 0,
    reactions,
    gripBroken: ({ core, element }) => {
      const gripFacts = elements[element]?.gripFacts;
      const known2 = core.grips.get(element);
      if (known2 !== void 0 || gripFacts === void 0) return known2 ?? 0n;
      const broken = brokenRules(ALL_REFUSALS.grip, { ...facts, core: core.core, ...gripFacts });
      core.grips.set(element, broken);
      return broken;
    },
    reactionBroken: ({ core, reaction }) => {
      const one2 = reactions[reaction];
      const known2 = core.reactions.get(reaction);
      if (known2 !== void 0 || one2 === void 0) return known2 ?? 0n;
      const figures = reactionFigures({ core: core.core, restraint: one2.restraint });
      const broken = brokenRules(ALL_REFUSALS.reaction, { ...facts, core: core.core, ...one2, reaction: figures });
      core.reactions.set(reaction, broken);
      return broken;
    }
  };
}
function tableCores({ facts, frames, stock, wishes }) {
  const drives = wishedIn(wishes, "drive");
  const heads = wishedIn(wishes, "head");
  const options = wishedIn(wishes, "option");
  const wishedLimiters = stock.limiters.filter(({ number }) => options?.has(number) ?? false);
  const wishedCounters = stock.counters.filter(({ number }) => options?.has(number) ?? false);
  const counters = wishedCounters.length > 0 ? wishedCounters : facts.duty.countTurns ? [null, ...stock.counters] : [null];
  const wanted = frames.frames.filter(
    ({ drive, head, limiter }) => (drives?.has(drive.number) ?? true) && (heads?.has(head.number) ?? true) && (wishedLimiters.length === 0 || limiter !== null && wishedLimiters.includes(limiter))
  );
  const memo = newCoreMemo();
  return wanted.flatMap(
    (frame) => frame.drive.facts.gears.flatMap((gear, gearIndex) => {
      const figures = coreFigures({ facts, frame, gearIndex, limiterUpTo: "needed" }, memo);
      return counters.map((counter) => {
        const { drive, limiter, head } = frame;
        const core = { drive, limiter, head, gear, gearIndex, counter, figures };
        return {
          core,
          output: frame.output,
          broken: brokenRules(ALL_REFUSALS.core, { ...facts, core }),
          parts: [drive, head, limiter, counter].filter((model) => model !== null),
          grips: /* @__PURE__ */ new Map(),
          reactions: /* @__PURE__ */ new Map()
        };
      });
    })
  );
}
function tableElements({ facts, frames, stock, wishes }) {
  const wanted = wishedIn(wishes, "adapter");
  const mustHold = [...wishedIn(wishes, "extension") ?? []];
  const free = lengthMatters(facts) || mustHold.length > 0;
  const side = facts.duty.grip.kind;
  const cases = gripCases({
    facts,
    adapters: stock.adapters.filter(
      ({ facts: { wheel, sockets } }) => (side === "wheel" ? wheel : sockets) !== void 0
    )
  });
  const chains = frames.chains.filter(
    (chain) => (free || chain.length <= 1) && mustHold.every((number) => chain.some((one2) => one2.number === number))
  );
  return stock.adapters.filter((adapter) => wanted?.has(adapter.number) ?? true).flatMap((adapter) => {
    const onWheel2 = side === "wheel" ? cases.map((gripCase) => brokenRules(ALL_REFUSALS.case, { ...facts, adapter, extensions: [], gripCase })) : null;
    return chains.filter((extensions) => couples(extensions, adapter)).map(
      (extensions) => ({
        input: extensions[0]?.facts.input ?? adapter.facts.input,
        parts: [...extensions, adapter],
        broken: brokenRules(ALL_REFUSALS.link, { ...facts, adapter, extensions }),
        cases: onWheel2 ?? cases.map((gripCase) => brokenRules(ALL_REFUSALS.case, { ...facts, adapter, extensions, gripCase })),
        gripFacts: { adapter, extensions }
      })
    );
  });
}
var BACKGROUND = /* @__PURE__ */ new Set(["grip-kind-of-adapter"]);
function enabledRules(ids) {
  const bits = (rules) => rules.reduce(
    (sum, rule, index) => ids.has(rule.id) || BACKGROUND.has(rule.id) ? sum | 1n << BigInt(index) : sum,
    0n
  );
  return {
    line: bits(ALL_REFUSALS.line),
    part: bits(ALL_REFUSALS.part),
    link: bits(ALL_REFUSALS.link),
    case: bits(ALL_REFUSALS.case),
    core: bits(ALL_REFUSALS.core),
    grip: bits(ALL_REFUSALS.grip),
    reaction: bits(ALL_REFUSALS.reaction)
  };
}
function couldServe(table2, on) {
  if ((table2.line & on.line) !== 0n) return false;
  const passes2 = (model) => (table2.part(model) & on.part) === 0n;
  const reactions = table2.reactions.flatMap(({ restraint }, index) => passes2(restraint) ? [index] : []);
  const groups = gripGroups({ table: table2, on, passes: passes2 });
  if (reactions.length === 0 || groups.length === 0) return false;
  return table2.cores.some(
    (core) => (core.broken & on.core) === 0n && core.parts.every(passes2) && reactions.some(
      (reaction) => on.reaction === 0n || (table2.reactionBroken({ core, reaction }) & on.reaction) === 0n
    ) && groups.some((group2) => joins(core.output, group2.input) && covers({ table: table2, on, core, group: group2 }))
  );
}
function gripGroups(at2) {
  const { table: table2, on, passes: passes2 } = at2;
  const groups = /* @__PURE__ */ new Map();
  for (const [element, { input, parts, broken, cases }] of table2.elements.entries()) {
    if ((broken & on.link) !== 0n || !parts.every(passes2)) continue;
    let takes = 0n;
    for (const [index, one2] of cases.entries()) if ((one2 & on.case) === 0n) takes |= 1n << BigInt(index);
    const key = `${input.form}${input.size}${input.gender}`;
    const group2 = groups.get(key) ?? { input, members: [] };
    group2.members.push({ element, takes });
    groups.set(key, group2);
  }
  const all = (1n << BigInt(table2.caseCount)) - 1n;
  return [...groups.values()].filter(
    ({ members }) => members.reduce((union, member) => union | member.takes, 0n) === all
  );
}
function covers(at2) {
  const { table: table2, on, core, group: group2 } = at2;
  const all = (1n << BigInt(table2.caseCount)) - 1n;
  let union = 0n;
  for (const { element, takes } of group2.members) {
    if (on.grip !== 0n && (table2.gripBroken({ core, element }) & on.grip) !== 0n) continue;
    union |= takes;
    if (union === all) return true;
  }
  return false;
}

// lib/solver/compiled-problem.ts
function compileProblem(problem) {
  const positions = new Map(problem.variables.map((variable, index) => [variable.name, index]));
  invariant(positions.size === problem.variables.length, "Two variables of a problem share a name.");
  const counters = { evaluations: 0, nodes: 0 };
  const constraints2 = problem.constraints.map((constraint) => compile({ problem, constraint, positions, counters }));
  return { problem, constraints: constraints2, sizes: problem.variables.map((variable) => variable.values.length), counters };
}
function compile(args) {
  const { problem, constraint, positions, counters } = args;
  const names = constraint.kind === "unary" ? [constraint.on] : constraint.on;
  const on = names.map((name) => {
    const position = positions.get(name);
    invariant(position !== void 0, `The constraint ${constraint.id} speaks of ${name}, which is no variable.`);
    return position;
  });
  const sizes = on.map((position) => problem.variables[position]?.values.length ?? 0);
  const verdicts = /* @__PURE__ */ new Map();
  const allows = (chosen) => {
    let key = 0;
    for (const [index, position] of on.entries()) key = key * (sizes[index] ?? 0) + (chosen[position] ?? 0);
    const remembered2 = verdicts.get(key);
    if (remembered2 !== void 0) return remembered2;
    counters.evaluations += 1;
    const verdict = ask({ problem, constraint, on, chosen });
    verdicts.set(key, verdict);
    return verdict;
  };
  return { id: constraint.id, kind: constraint.kind, on, askedAt: Math.max(...on), allows };
}
function ask(args) {
  const { problem, constraint, on, chosen } = args;
  const values = on.map((position) => valueAt(problem, { variable: position, value: chosen[position] ?? -1 }));
  switch (constraint.kind) {
    case "unary":
      return values.length === 1 && values.every((value) => constraint.allows(value));
    case "binary": {
      const [first2, second] = on.map((variable) => ({ variable, value: chosen[variable] ?? -1 }));
      invariant(first2 !== void 0 && second !== void 0, `The constraint ${constraint.id} needs two values.`);
      return constraint.allows(valueAt(problem, first2), valueAt(problem, second));
    }
    case "chain":
      return constraint.allows(values);
  }
}
function valueAt(problem, at2) {
  const values = problem.variables[at2.variable]?.values ?? [];
  invariant(at2.value >= 0 && at2.value < values.length, "A value was asked for outside its variable.");
  const [value] = values.slice(at2.value, at2.value + 1);
  invariant(value !== void 0, "A value of a variable is never undefined.");
  return value;
}

// lib/solver/search.ts
function search(compiled, options) {
  const active = compiled.constraints.filter((constraint) => options.only?.has(constraint.id) ?? true);
  const started = { ...compiled.counters };
  const domains = filteredDomains(compiled, active);
  const count = compiled.sizes.length;
  const asked = Array.from(
    { length: count },
    (_, position) => active.filter((constraint) => constraint.askedAt === position && constraint.kind !== "unary")
  );
  const chosen = new Array(count).fill(0);
  const nodeLimit = options.nodeLimit ?? Number.POSITIVE_INFINITY;
  let solutions = 0;
  const descend = (position) => {
    if (position === count) {
      solutions += 1;
      const solution = chosen.map((value, variable) => valueAt(compiled.problem, { variable, value }));
      return options.visit(solution) === "stop" ? "stopped" : "complete";
    }
    for (const value of domains[position] ?? []) {
      if (compiled.counters.nodes - started.nodes >= nodeLimit) return "limit";
      compiled.counters.nodes += 1;
      chosen[position] = value;
      if (!(asked[position] ?? []).every((constraint) => constraint.allows(chosen))) continue;
      const end2 = descend(position + 1);
      if (end2 !== "complete") return end2;
    }
    return "complete";
  };
  const end = domains.some((domain) => domain.length === 0) ? "complete" : descend(0);
  return {
    end,
    solutions,
    effort: {
      evaluations: compiled.counters.evaluations - started.evaluations,
      nodes: compiled.counters.nodes - started.nodes
    }
  };
}
function filteredDomains(compiled, active) {
  const unary = active.filter((constraint) => constraint.kind === "unary");
  const probe = new Array(compiled.sizes.length).fill(0);
  return compiled.sizes.map((size, position) => {
    const mine = unary.filter((constraint) => constraint.on[0] === position);
    const kept = [];
    for (let value = 0; value < size; value += 1) {
      probe[position] = value;
      if (mine.every((constraint) => constraint.allows(probe))) kept.push(value);
    }
    return kept;
  });
}

// lib/kits/frames.ts
var isDrive = (value) => value?.role === "drive";
var isHead = (value) => value?.role === "head";
var isOption = (value) => value?.role === "option";
var inLine = (option, place) => option.facts.sits === place;
function joinsLimiter(drive, limiter) {
  if (!isDrive(drive) || !isOption(limiter)) return true;
  if (drive.facts.limiter !== null) return false;
  if (!inLine(limiter, "after drive")) return true;
  return limiter.facts.input !== void 0 && joins(drive.facts.output, limiter.facts.input);
}
function joinsHead(limiter, head) {
  if (!isHead(head) || !isOption(limiter)) return true;
  const { input, output } = limiter.facts;
  if (inLine(limiter, "after drive")) return output !== void 0 && joins(output, head.facts.input);
  if (inLine(limiter, "after head")) return input !== void 0 && joins(head.facts.output, input);
  return true;
}
function driveMeetsHead([drive, limiter, head]) {
  if (!isDrive(drive ?? null) || !isHead(head ?? null)) return false;
  if (isOption(limiter ?? null) && limiter?.role === "option" && inLine(limiter, "after drive")) return true;
  return drive?.role === "drive" && head?.role === "head" && joins(drive.facts.output, head.facts.input);
}
var CONSTRAINTS = [
  { kind: "binary", id: "couplings-join", on: ["drive", "limiter"], allows: joinsLimiter },
  { kind: "binary", id: "couplings-join", on: ["limiter", "head"], allows: joinsHead },
  { kind: "chain", id: "couplings-join", on: ["drive", "limiter", "head"], allows: driveMeetsHead }
];
function frameProblem(stock, constraints2) {
  return compileProblem({
    variables: [
      { name: "drive", values: stock.drives },
      { name: "limiter", values: [null, ...stock.limiters] },
      { name: "head", values: stock.heads }
    ],
    constraints: constraints2
  });
}
function findFrames(stock) {
  const alike = {
    drives: groupAlike(stock.drives, ({ facts }) => `${couplingKey(facts.output)} ${facts.limiter === null}`),
    limiters: groupAlike(
      stock.limiters,
      ({ facts }) => `${facts.sits} ${couplingKey(facts.input)} ${couplingKey(facts.output)}`
    ),
    heads: groupAlike(stock.heads, ({ facts }) => `${couplingKey(facts.input)} ${couplingKey(facts.output)}`)
  };
  const firsts = {
    ...stock,
    drives: alike.drives.firsts,
    limiters: alike.limiters.firsts,
    heads: alike.heads.firsts
  };
  const joining = /* @__PURE__ */ new Map();
  const end = search(frameProblem(firsts, CONSTRAINTS), {
    visit: ([drive = null, limiter = null, head = null]) => {
      if (isDrive(drive) && isHead(head)) {
        const option = isOption(limiter) ? limiter : null;
        const ofDrive = joining.get(drive) ?? /* @__PURE__ */ new Map();
        joining.set(drive, ofDrive.set(option, (ofDrive.get(option) ?? /* @__PURE__ */ new Set()).add(head)));
      }
      return "go on";
    }
  });
  const frames = [];
  for (const drive of stock.drives) {
    const ofDrive = joining.get(alike.drives.firstOf(drive));
    for (const limiter of [null, ...stock.limiters]) {
      const heads = ofDrive?.get(limiter === null ? null : alike.limiters.firstOf(limiter));
      if (heads === void 0) continue;
      const under = limiter !== null && inLine(limiter, "after head") ? limiter.facts.output : void 0;
      for (const head of stock.heads) {
        if (heads.has(alike.heads.firstOf(head)))
          frames.push({ drive, limiter, head, output: under ?? head.facts.output });
      }
    }
  }
  return { frames, chains: extensionChains(stock.extensions), evaluations: end.effort.evaluations };
}
var couplingKey = (coupling) => coupling === void 0 ? "" : `${coupling.form} ${coupling.size} ${coupling.gender}`;
function groupAlike(parts, key) {
  const firsts = /* @__PURE__ */ new Map();
  const firstOf = /* @__PURE__ */ new Map();
  for (const part of parts) {
    const first2 = firsts.get(key(part)) ?? part;
    firsts.set(key(part), first2);
    firstOf.set(part, first2);
  }
  return { firsts: [...firsts.values()], firstOf: (part) => firstOf.get(part) ?? part };
}
function extensionChains(extensions) {
  const isJoint = (extension) => extension.facts.kind === "universal joint";
  const pairs = extensions.flatMap(
    (first2) => extensions.filter((second) => joins(first2.facts.output, second.facts.input) && !(isJoint(first2) && isJoint(second))).map((second) => [first2, second])
  );
  return [[], ...extensions.map((extension) => [extension]), ...pairs];
}

// lib/duty/site.ts
var POWER_SOURCES = ["battery", "air", "petrol"];

// lib/kits/repair-trials.ts
var TRIED = { basis: "assumed", source: "A change tried out as a repair." };
function trialsFor({
  question,
  conflict
}) {
  const { facts } = question;
  return [
    ...question.wishes.length > 0 ? [{ sentence: "It can be served when it is not held to that part.", wishes: "none" }] : [],
    ...measureTrials(facts),
    ...siteTrials(facts),
    ...placeTrials(question),
    ...torqueTrials(facts, conflict)
  ];
}
function changed2(facts, change) {
  const line = change.line ?? facts.line;
  const duty = change.duty ?? facts.duty;
  const site = change.site ?? facts.site;
  return { line, duty, site, place: placeOf({ line, duty, site }) };
}
function atNominal(value) {
  return exactly(value.unit, value.nominal, TRIED);
}
function measureTrials(facts) {
  const { grip } = facts.duty;
  const withGrip = (change) => changed2(facts, { duty: { ...facts.duty, grip: { ...grip, ...change } } });
  const trials = [];
  if (grip.wheelDiameter !== void 0 && grip.wheelDiameter.low < grip.wheelDiameter.high) {
    trials.push({
      sentence: `Measure the wheel: ${sayLength(grip.wheelDiameter.low)} to ${sayLength(grip.wheelDiameter.high)} is too wide a range; at about ${sayLength(grip.wheelDiameter.nominal)} it can be served.`,
      facts: withGrip({ wheelDiameter: atNominal(grip.wheelDiameter) }),
      cost: "a measurement"
    });
  }
  if (grip.wheelSpokes !== void 0 && grip.wheelSpokes.low < grip.wheelSpokes.high) {
    const spokes = Math.round((grip.wheelSpokes.low + grip.wheelSpokes.high) / 2);
    trials.push({
      sentence: `Count the spokes: ${grip.wheelSpokes.low} to ${grip.wheelSpokes.high} is too wide a range; with ${spokes} it can be served.`,
      facts: withGrip({ wheelSpokes: { low: spokes, high: spokes } }),
      cost: "a look"
    });
  }
  const [likeliest] = grip.nutSizes ?? [];
  if (likeliest !== void 0 && (grip.nutSizes?.length ?? 0) > 1) {
    trials.push({
      sentence: `Measure the nut: several sizes are possible; at ${sayLength(likeliest.nominal)} across flats it can be served.`,
      facts: withGrip({ nutSizes: [likeliest] }),
      cost: "a measurement"
    });
  }
  if (grip.depthToNut !== void 0 && grip.depthToNut.low < grip.depthToNut.high) {
    trials.push({
      sentence: `Measure the depth to the nut: at about ${sayLength(grip.depthToNut.nominal)} it can be served.`,
      facts: withGrip({ depthToNut: atNominal(grip.depthToNut) }),
      cost: "a measurement"
    });
  }
  if (grip.stemRisesThroughWheel === "maybe") {
    trials.push({
      sentence: "Find out whether the stem rises through the wheel: where it does not, it can be served.",
      facts: withGrip({ stemRisesThroughWheel: "no" }),
      cost: "a look"
    });
  }
  if (grip.wheelRises === "maybe") {
    trials.push({
      sentence: "Find out whether the wheel rises with its stem: where it does not, it can be served.",
      facts: withGrip({ wheelRises: "no" }),
      cost: "a look"
    });
  }
  return trials;
}
function siteTrials(facts) {
  const { site } = facts;
  const sources = POWER_SOURCES.filter((source2) => !site.sourcesAllowed.includes(source2)).map((source2) => ({
    sentence: `It can be served if the site allows ${source2}${source2 === "air" && site.airPressure === void 0 ? " and gives 6 bar of it" : ""}.`,
    facts: changed2(facts, {
      site: {
        ...site,
        sourcesAllowed: [...site.sourcesAllowed, source2],
        ...source2 === "air" && site.airPressure === void 0 ? { airPressure: exactly("Pa", 6e5, TRIED) } : {}
      }
    })
  }));
  const air = site.sourcesAllowed.includes("air") && (site.airPressure === void 0 || site.airPressure.low < 6e5) ? [
    {
      sentence: `It can be served with compressed air of 6 bar at the valve${site.airPressure === void 0 ? ", of which the site says nothing" : ""}.`,
      facts: changed2(facts, { site: { ...site, airPressure: exactly("Pa", 6e5, TRIED) } })
    }
  ] : [];
  const rules = site.houseRules.map((rule) => ({
    sentence: `It can be served without the house rule \u201C${rule.sentence}\u201D`,
    facts: changed2(facts, { site: { ...site, houseRules: site.houseRules.filter((other) => other !== rule) } })
  }));
  return [...sources, ...air, ...rules];
}
function placeTrials({ facts, stock }) {
  const { line, site } = facts;
  const at2 = (place, more = {}) => changed2(facts, { line: { ...line, place: { ...line.place, ...place } }, site: { ...site, ...more } });
  const reaches = stock.restraints.filter((one2) => one2.facts.needs.includes("vehicle")).map((one2) => one2.facts.reach);
  const trials = [];
  if (reaches.length > 0) {
    const reach = Math.max(...reaches);
    trials.push({
      sentence: `It can be served if a vehicle may stand within ${sayLength(reach)} of the valve.`,
      facts: at2({ vehicleDistance: exactly("m", reach, TRIED) }, { vehicleAccess: true })
    });
  }
  trials.push({
    sentence: "It can be served if a structure to take the reaction stands near and may be used.",
    facts: at2(
      { anchor: { value: "structure", ...TRIED } },
      site.anchorsAllowed === void 0 ? {} : { anchorsAllowed: [...site.anchorsAllowed, "structure"] }
    )
  });
  const { clearRadius, headroom } = line.place;
  if (clearRadius !== void 0)
    trials.push(
      roomTrial({
        facts,
        name: "a clear radius",
        low: clearRadius.low,
        high: 2,
        to: (value) => at2({ clearRadius: exactly("m", value, TRIED) })
      })
    );
  if (headroom !== void 0)
    trials.push(
      roomTrial({
        facts,
        name: "a headroom",
        low: headroom.low,
        high: 3,
        to: (value) => at2({ headroom: exactly("m", value, TRIED) })
      })
    );
  return trials;
}
function roomTrial(room) {
  return {
    sentence: "",
    narrow: (works) => {
      const found = leastThat({ low: room.low, high: room.high, step: 0.05, works: (value) => works(room.to(value)) });
      return found === null ? null : `It can be served with ${room.name} of ${sayLength(found)}.`;
    }
  };
}
function torqueTrials(facts, conflict) {
  const { duty } = facts;
  const most = Math.max(duty.opening.starting.high, duty.closing.starting.high);
  const scaled = (factor) => {
    const way = (one2) => ({
      ...one2,
      starting: times(one2.starting, factor),
      running: times(one2.running, factor)
    });
    return changed2(facts, { duty: { ...duty, opening: way(duty.opening), closing: way(duty.closing) } });
  };
  const never = (factor) => {
    const way = (one2) => ({
      ...one2,
      neverExceed: { ...one2.neverExceed, torque: { ...times(one2.neverExceed.torque, factor), basis: "stated" } }
    });
    return changed2(facts, { duty: { ...duty, opening: way(duty.opening), closing: way(duty.closing) } });
  };
  const lowest = Math.min(duty.opening.neverExceed.torque.low, duty.closing.neverExceed.torque.low);
  const speed = facts.duty.maxInputSpeed.nominal;
  return [
    {
      sentence: "",
      cost: "a torque reading",
      narrow: (works) => {
        const found = mostThat({ low: 0.02, high: 1, works: (factor) => works(scaled(factor)) });
        return found === null ? null : `It can be served at a torque of at most ${sayTorque(threeDigitsDown(most * found))} (planned: ${sayTorque(most)}).`;
      }
    },
    {
      sentence: "",
      cost: "the maker\u2019s figure",
      narrow: (works) => {
        const found = leastThat({ low: 1, high: 8, step: 0.05, works: (factor) => works(never(factor)) });
        return found === null ? null : `It can be served if the valve may see ${sayTorque(lowest * found)} (known now: ${sayTorque(lowest)}), on its maker\u2019s word.`;
      }
    },
    ...conflict.some((id) => ["input-speed", "stroke-time", "extension-speed"].includes(id)) ? [
      {
        sentence: "",
        cost: "the maker\u2019s figure",
        narrow: (works) => {
          const to = (value) => changed2(facts, {
            duty: { ...duty, maxInputSpeed: exactly("1/min", value, TRIED), minStrokeTime: null }
          });
          const found = leastThat({ low: speed, high: 10 * speed, step: 1, works: (value) => works(to(value)) });
          return found === null ? null : `It can be served if it may be turned at ${sayPlain(found)} 1/min (allowed now: ${sayPlain(speed)}).`;
        }
      }
    ] : []
  ];
}
function times(value, factor) {
  return known(
    value.unit,
    { low: value.low * factor, nominal: value.nominal * factor, high: value.high * factor },
    value
  );
}
function leastThat({ low, high, step, works }) {
  if (!works(high)) return null;
  let bad = low;
  let good = high;
  while (good - bad > step) {
    const middle = (good + bad) / 2;
    if (works(middle)) good = middle;
    else bad = middle;
  }
  return Math.ceil(good / step - 1e-9) * step;
}
function mostThat({ low, high, works }) {
  if (!works(low)) return null;
  let good = low;
  let bad = high;
  while (bad / good > 1.01) {
    const middle = Math.sqrt(good * bad);
    if (works(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
function threeDigitsDown(value) {
  const step = 10 ** (Math.floor(Math.log10(value)) - 2);
  return Math.floor(value / step + 1e-9) * step;
}

// lib/kits/covers.ts
function findCovers({
  takes,
  all
}) {
  const found = [];
  for (const [position, bits] of takes.entries()) {
    if (bits === all && found.length < COVERS_KEPT) found.push([position]);
  }
  const groups = groupByBits(takes, all);
  const canFill = fillable(groups, all);
  const extend = (chosen, covered, left) => {
    if (left === 0) {
      if (covered === all && !hasNeedless(chosen, takes, all)) found.push(chosen);
      return;
    }
    const last = chosen.at(-1) ?? -1;
    const next = groups.filter(({ bits }) => (bits & ~covered) !== 0n && canFill(covered | bits, left - 1)).flatMap(({ positions }) => positions.filter((position) => position > last)).sort((a, b) => a - b);
    for (const position of next) {
      if (found.length >= COVERS_KEPT) return;
      extend([...chosen, position], covered | (takes[position] ?? 0n), left - 1);
    }
  };
  for (let size = 2; size <= LARGEST_COVER && found.length < COVERS_KEPT; size += 1) extend([], 0n, size);
  return found;
}
function groupByBits(takes, all) {
  const groups = /* @__PURE__ */ new Map();
  for (const [position, bits] of takes.entries()) {
    if (bits === all) continue;
    const group2 = groups.get(bits);
    if (group2 === void 0) groups.set(bits, { bits, positions: [position] });
    else group2.positions.push(position);
  }
  return [...groups.values()];
}
function fillable(groups, all) {
  const answers = Array.from({ length: LARGEST_COVER + 1 }, () => /* @__PURE__ */ new Map());
  const ask2 = (covered, left) => {
    if (covered === all) return true;
    if (left === 0) return false;
    const known2 = answers[left]?.get(covered);
    if (known2 !== void 0) return known2;
    const answer = groups.some(({ bits }) => ask2(covered | bits, left - 1));
    answers[left]?.set(covered, answer);
    return answer;
  };
  return ask2;
}
function hasNeedless(chosen, takes, all) {
  return chosen.some((left) => {
    let covered = 0n;
    for (const position of chosen) if (position !== left) covered |= takes[position] ?? 0n;
    return covered === all;
  });
}

// lib/kits/ranked-limits.ts
function rankAmong(limits) {
  const sorted = Float64Array.from(new Set(limits)).sort();
  return (value) => {
    let from = 0;
    let to = sorted.length;
    while (from < to) {
      const middle = from + to >> 1;
      if ((sorted[middle] ?? Number.POSITIVE_INFINITY) < value) from = middle + 1;
      else to = middle;
    }
    return from;
  };
}
function sharing() {
  const shelves = /* @__PURE__ */ new Map();
  return (positions) => {
    let hash = positions.length;
    for (const position of positions) hash = Math.imul(hash, 16777619) ^ position | 0;
    const shelf2 = shelves.get(hash) ?? [];
    const known2 = shelf2.find(
      (other) => other.length === positions.length && other.every((position, index) => position === positions[index])
    );
    if (known2 !== void 0) return known2;
    shelf2.push(positions);
    shelves.set(hash, shelf2);
    return positions;
  };
}

// lib/kits/grip-finder.ts
function gripFinder(input) {
  const { facts, rules, tally, elements } = input;
  const all = (1n << BigInt(input.cases.length)) - 1n;
  const share2 = sharing();
  const limits = limitsOf(input);
  const byKey = /* @__PURE__ */ new Map();
  const byCoupling = /* @__PURE__ */ new Map();
  const joinedTo = (output) => {
    const known2 = byCoupling.get(output);
    if (known2 !== void 0) return known2;
    const key = `${output.form} ${output.size} ${output.gender}`;
    const joined = byKey.get(key) ?? joinedOf(elements, { output, all, limits });
    byKey.set(key, joined);
    byCoupling.set(output, joined);
    return joined;
  };
  const ofHead = headFilter(input, share2);
  const rest = rules.filter(
    ({ id }) => !GRIP_OF_HEAD.has(id) && !GRIP_TORQUE_LIMITS.has(id) && !GRIP_SPEED_LIMITS.has(id)
  );
  const { line, duty, site, place } = facts;
  const passesRest = (core, position) => {
    const element = elements[position];
    if (element === void 0) return false;
    const { adapter, extensions } = element;
    return isAllowed(rest, { line, duty, site, place, core, adapter, extensions }, tally);
  };
  const covers2 = coverFinder(input, all);
  return {
    mayCover: (output) => joinedTo(output).mayCover,
    gripsFor: (core, output) => {
      const joined = joinedTo(output);
      const held = heldBy({ joined, limits, core, from: ofHead(core, joined), tally, share: share2 });
      return covers2(rest.length === 0 ? held : share2(held.filter((position) => passesRest(core, position))));
    }
  };
}
function limitsOf({ rules, elements, tally }) {
  const least = (limits) => {
    const asked = rules.flatMap(({ id }) => limits.get(id) ?? []);
    tally.evaluations += asked.length * elements.length;
    return Float64Array.from(
      elements,
      (element) => asked.reduce((lowest, limit) => Math.min(lowest, limit(element)), Number.POSITIVE_INFINITY)
    );
  };
  return { torque: least(GRIP_TORQUE_LIMITS), speed: least(GRIP_SPEED_LIMITS) };
}
function joinedOf(elements, { output, all, limits }) {
  const positions = [];
  let union = 0n;
  for (const [position, element] of elements.entries()) {
    if (!joins(output, element.input)) continue;
    positions.push(position);
    union |= element.takes;
  }
  const ofThese = (of) => positions.map((position) => of[position] ?? 0);
  return {
    positions,
    mayCover: union === all,
    torqueRank: rankAmong(ofThese(limits.torque)),
    speedRank: rankAmong(ofThese(limits.speed)),
    ofHead: /* @__PURE__ */ new Map(),
    found: /* @__PURE__ */ new Map()
  };
}
function headFilter({ facts, rules, elements, tally }, share2) {
  const asked = rules.filter(({ id }) => GRIP_OF_HEAD.has(id));
  const { line, duty, site, place } = facts;
  return (core, joined) => {
    const known2 = joined.ofHead.get(core.head);
    if (known2 !== void 0) return known2;
    const passing = joined.positions.filter((position) => {
      const element = elements[position];
      if (element === void 0) return false;
      const { adapter, extensions } = element;
      return isAllowed(asked, { line, duty, site, place, core, adapter, extensions }, tally);
    });
    const shared = share2(passing);
    joined.ofHead.set(core.head, shared);
    return shared;
  };
}
function heldBy(at2) {
  const { joined, limits, core, from } = at2;
  const { highestAtValve, opening, closing } = core.figures;
  const fastest2 = Math.max(opening.fastest, closing.fastest);
  const rank = joined.torqueRank(highestAtValve) * 1e5 + joined.speedRank(fastest2);
  const byRank = joined.found.get(from) ?? /* @__PURE__ */ new Map();
  joined.found.set(from, byRank);
  const known2 = byRank.get(rank);
  if (known2 !== void 0) return known2;
  at2.tally.pairs += from.length;
  const held = from.filter(
    (position) => !(highestAtValve > (limits.torque[position] ?? 0)) && !(fastest2 > (limits.speed[position] ?? 0))
  );
  const shared = at2.share(held);
  byRank.set(rank, shared);
  return shared;
}
function coverFinder({ elements, cases }, all) {
  const likeliest = 1n << BigInt(Math.max(0, cases.length - 1));
  const takesIt = (element) => (element.takes & likeliest) !== 0n;
  const remembered2 = /* @__PURE__ */ new Map();
  const made = /* @__PURE__ */ new Map();
  return (fitting) => {
    const known2 = remembered2.get(fitting);
    if (known2 !== void 0) return known2;
    const there = fitting.map((position) => elements[position]?.takes ?? 0n);
    const grips = findCovers({ takes: there, all }).map((cover) => {
      const positions = cover.map((index) => fitting[index] ?? 0);
      const key = positions.join(" ");
      const grip = made.get(key) ?? { elements: likeliestFirst(positions) };
      made.set(key, grip);
      return grip;
    });
    remembered2.set(fitting, grips);
    return grips;
  };
  function likeliestFirst(positions) {
    const chosen = positions.flatMap((position) => elements[position] ?? []);
    return [...chosen.filter(takesIt), ...chosen.filter((element) => !takesIt(element))];
  }
}

// lib/kits/reaction-finder.ts
function reactionFinder(input) {
  const { facts, rules, tally, reactions } = input;
  const { line, duty, site, place } = facts;
  const share2 = sharing();
  const limitsOf2 = (limits) => {
    const asked = rules.flatMap(({ id }) => limits.get(id) ?? []);
    tally.evaluations += asked.length * reactions.length;
    return reactions.map(({ restraint }) => Math.min(...asked.map((limit) => limit(restraint))));
  };
  const stallLimits = limitsOf2(REACTION_STALL_LIMITS);
  const torqueLimits = limitsOf2(REACTION_TORQUE_LIMITS);
  const stallRank = rankAmong(stallLimits);
  const torqueRank = rankAmong(torqueLimits);
  const asks = (some, core, position) => {
    const one2 = reactions[position];
    if (one2 === void 0) return false;
    const { restraint, secondChain } = one2;
    const reaction = reactionFigures({ core, restraint });
    return isAllowed(some, { line, duty, site, place, core, restraint, secondChain, reaction }, tally);
  };
  const headRules = rules.filter(({ id }) => REACTION_OF_HEAD.has(id));
  const rest = rules.filter(
    ({ id }) => !REACTION_OF_HEAD.has(id) && !REACTION_STALL_LIMITS.has(id) && !REACTION_TORQUE_LIMITS.has(id)
  );
  const ofHead = /* @__PURE__ */ new Map();
  const found = /* @__PURE__ */ new Map();
  const lists = /* @__PURE__ */ new Map();
  return (core) => {
    const from = ofHead.get(core.head) ?? share2([...reactions.keys()].filter((one2) => asks(headRules, core, one2)));
    ofHead.set(core.head, from);
    const { stallAtValve, highestAtValve } = core.figures;
    const rank = stallRank(stallAtValve) * 1e5 + torqueRank(highestAtValve);
    const byRank = found.get(from) ?? /* @__PURE__ */ new Map();
    found.set(from, byRank);
    let held = byRank.get(rank);
    if (held === void 0) {
      tally.pairs += from.length;
      held = share2(
        from.filter((one2) => !(stallAtValve > (stallLimits[one2] ?? 0)) && !(highestAtValve > (torqueLimits[one2] ?? 0)))
      );
      byRank.set(rank, held);
    }
    if (rest.length > 0) held = share2(held.filter((one2) => asks(rest, core, one2)));
    const known2 = lists.get(held) ?? held.flatMap((one2) => reactions[one2] ?? []);
    lists.set(held, known2);
    return known2;
  };
}

// lib/kits/search-class.ts
function searchClass(question) {
  const found = [];
  walkClass(question, (core) => {
    found.push(core);
    return "go on";
  });
  return found;
}
function canBeServed(question) {
  let served = false;
  walkClass(question, () => {
    served = true;
    return "stop";
  });
  return served;
}
function walkClass(question, visit) {
  const { facts, refusals, tally } = question;
  if (!isAllowed(refusals.line, facts, tally)) return;
  const domains = domainsOf(question);
  const { allows, counters } = domains;
  if (domains.elements.length === 0 || domains.reactions.length === 0 || counters.length === 0) return;
  const grips = gripFinder({ ...domains, facts, rules: refusals.grip, tally });
  const holding = reactionFinder({ ...domains, facts, rules: refusals.reaction, tally });
  const passing = coreFilter(question, counters);
  const memo = newCoreMemo();
  for (const frame of question.frames.frames) {
    const { drive, limiter, head, output } = frame;
    if (!allows(drive) || !allows(head) || !grips.mayCover(output)) continue;
    if (!allows(limiter) || !holdsWishedOptions(question, limiter)) continue;
    for (let gearIndex = 0; gearIndex < drive.facts.gears.length; gearIndex += 1) {
      const passed = passing(frame, { gearIndex, memo });
      if (passed === null) continue;
      const reactions = holding(passed.core);
      if (reactions.length === 0) continue;
      const found = grips.gripsFor(passed.core, output);
      if (found.length > 0 && visit({ ...passed, grips: found, reactions }) === "stop") return;
    }
  }
}
function coreFilter({ facts, refusals, tally }, counters) {
  const { line, duty, site, place } = facts;
  const ofMesh = refusals.core.filter(({ id }) => CORE_OF_MESH.has(id));
  const ofLimiter = refusals.core.filter(({ id }) => CORE_WITHOUT_COUNTER.has(id) && !CORE_OF_MESH.has(id));
  const ofCounter = refusals.core.filter(({ id }) => !CORE_WITHOUT_COUNTER.has(id));
  const lists = /* @__PURE__ */ new Map();
  const fittingCounters = (core) => {
    const passes2 = (counter) => {
      const held = counter === core.counter ? core : { ...core, counter };
      return isAllowed(ofCounter, { line, duty, site, place, core: held }, tally);
    };
    const verdicts = counters.map(passes2);
    if (!verdicts.includes(false)) return counters;
    const key = verdicts.join();
    const known2 = lists.get(key) ?? counters.filter((_, index) => verdicts[index]);
    lists.set(key, known2);
    return known2;
  };
  const meshes = /* @__PURE__ */ new Map();
  return (frame, { gearIndex, memo }) => {
    const { drive, limiter, head } = frame;
    const gear = drive.facts.gears[gearIndex];
    const [first2] = counters;
    if (gear === void 0 || first2 === void 0) return null;
    const ofDrive = meshes.get(drive) ?? /* @__PURE__ */ new Map();
    meshes.set(drive, ofDrive);
    const gears = ofDrive.get(head) ?? [];
    ofDrive.set(head, gears);
    const input = { facts, frame, gearIndex, limiterUpTo: "needed" };
    const coreWith = (figures) => ({ drive, limiter, head, gear, gearIndex, counter: first2, figures });
    gears[gearIndex] ??= isAllowed(
      ofMesh,
      { line, duty, site, place, core: coreWith(unlimitedFigures(input, memo)) },
      tally
    );
    if (!gears[gearIndex]) return null;
    tally.cores += 1;
    const core = coreWith(coreFigures(input, memo));
    const coreFacts = { line, duty, site, place, core };
    if (!isAllowed(ofLimiter, coreFacts, tally)) return null;
    const fitting = fittingCounters(core);
    const [counter] = fitting;
    if (counter === void 0) return null;
    return { core: counter === first2 ? core : { ...core, counter }, counters: fitting };
  };
}
function domainsOf(question) {
  const { facts, stock, frames, refusals, tally, wishes } = question;
  const verdicts = /* @__PURE__ */ new Map();
  const wished = {
    drive: wishedIn(wishes, "drive"),
    head: wishedIn(wishes, "head"),
    adapter: wishedIn(wishes, "adapter"),
    restraint: wishedIn(wishes, "restraint")
  };
  const allows = (model) => {
    if (model === null) return true;
    const known2 = verdicts.get(model);
    if (known2 !== void 0) return known2;
    const verdict = mayBeUsed(model);
    verdicts.set(model, verdict);
    return verdict;
  };
  const mayBeUsed = (model) => {
    if (question.made === "stock only" && model.madeToOrder) return false;
    const { role } = model;
    if ((role === "drive" || role === "head" || role === "adapter" || role === "restraint") && wished[role]?.has(model.number) === false)
      return false;
    return isAllowed(
      refusals.part,
      { line: facts.line, duty: facts.duty, site: facts.site, place: facts.place, part: model },
      tally
    );
  };
  const adapters = stock.adapters.filter(allows);
  const cases = gripCases({ facts, adapters });
  const chains = frames.chains.filter((chain) => chain.every(allows));
  const mustHold = [...wishedIn(wishes, "extension") ?? []];
  return {
    cases,
    elements: gripElements({ facts, adapters, chains, cases, refusals, tally, mustHold }),
    reactions: reactionsOf({ restraints: stock.restraints.filter(allows), stock, facts }),
    counters: countersFor(question, allows),
    allows
  };
}
function countersFor({ facts, stock, wishes }, allows) {
  const wished = wishes.filter((model) => model.role === "option").filter((model) => model.facts.kind === "turns counter");
  if (wished.length > 0) return wished.filter(allows);
  return facts.duty.countTurns ? [null, ...stock.counters.filter(allows)] : [null];
}
function holdsWishedOptions({ wishes }, limiter) {
  const wished = wishes.filter((model) => model.role === "option").filter((model) => model.facts.kind === "torque limiter");
  return wished.length === 0 || limiter !== null && wished.some((model) => model.number === limiter.number);
}

// lib/kits/stock-by-role.ts
function stockByRole(models2) {
  const all = models2.toSorted((a, b) => a.number < b.number ? -1 : a.number > b.number ? 1 : 0);
  return {
    drives: all.filter((model) => model.role === "drive"),
    heads: all.filter((model) => model.role === "head"),
    adapters: all.filter((model) => model.role === "adapter"),
    extensions: all.filter((model) => model.role === "extension"),
    restraints: all.filter((model) => model.role === "restraint"),
    limiters: all.filter((model) => model.role === "option").filter((model) => model.facts.kind === "torque limiter"),
    counters: all.filter((model) => model.role === "option").filter((model) => model.facts.kind === "turns counter"),
    accessories: all.filter((model) => model.role === "accessory"),
    all
  };
}

// lib/kits/repairs.ts
var MOST_REPAIRS = 6;
function findRepairs({
  question,
  conflict,
  models: models2,
  constraints: constraints2
}) {
  const repairs = [];
  const works = (trial) => {
    const held = { ...question, facts: trial.facts ?? question.facts, tally: newTally() };
    const free = trial.wishes === "none" ? { ...held, wishes: [] } : held;
    return canBeServed(free) || canBeServed({ ...free, made: "made to order too" });
  };
  for (const trial of trialsFor({ question, conflict })) {
    if (repairs.length >= MOST_REPAIRS) break;
    const told = trial.narrow === void 0 ? works(trial) ? trial.sentence : null : trial.narrow((facts) => works({ ...trial, facts }));
    if (told !== null) repairs.push({ sentence: told, ...trial.cost === void 0 ? {} : { cost: trial.cost } });
  }
  return [...repairs, ...unexcluded({ question, models: models2, constraints: constraints2 })];
}
function unexcluded(at2) {
  if (at2.constraints.excludedParts.length === 0) return [];
  const stock = stockByRole(at2.models);
  const free = { ...at2.question, stock, frames: findFrames(stock), tally: newTally() };
  if (!canBeServed(free) && !canBeServed({ ...free, made: "made to order too" })) return [];
  return [
    {
      sentence: `It can be served when the parts left out (${at2.constraints.excludedParts.join(", ")}) may be used again.`
    }
  ];
}

// lib/kits/tell-conflict.ts
function tellConflict({
  question,
  conflict
}) {
  return conflict.flatMap((id) => {
    const told = [
      ...tellParts(question, id),
      ...tellLinks(question, id),
      ...tellCases(question, id),
      ...tellCores(question, { id, conflict })
    ];
    const nearest = told.toSorted((a, b) => a.broken - b.broken)[0];
    if (nearest === void 0) return [];
    const others = new Set(told.map((one2) => one2.part)).size - 1;
    const more = others > 0 ? ` (${others} more ${others === 1 ? "is" : "are"} refused for the same reason)` : "";
    const finding = nearest.finding();
    return [{ ...finding, sentence: `${finding.sentence}${more}` }];
  });
}
function tellParts({ facts, stock }, id) {
  const rule = RULES_OF.part.find((one2) => one2.id === id);
  if (rule === void 0) return [];
  const others = RULES_OF.part.filter((one2) => one2.severity === "refusal");
  return stock.all.flatMap((part) => {
    const partFacts = { ...facts, part };
    if (!rule.speaks(partFacts)) return [];
    return [
      {
        finding: () => findingOf(rule, partFacts),
        part: part.number,
        broken: others.filter((one2) => one2.speaks(partFacts)).length
      }
    ];
  });
}
function tellLinks({ facts, stock, frames }, id) {
  const rule = RULES_OF.link.find((one2) => one2.id === id);
  if (rule === void 0) return [];
  return sideAdapters(facts, stock.adapters).flatMap(
    (adapter) => frames.chains.filter((chain) => chain.length <= 1 && couples(chain, adapter)).flatMap((extensions) => {
      const linkFacts = { ...facts, adapter, extensions };
      return rule.speaks(linkFacts) ? [{ finding: () => findingOf(rule, linkFacts), part: adapter.number, broken: extensions.length }] : [];
    })
  );
}
function tellCases({ facts, stock }, id) {
  const rule = RULES_OF.case.find((one2) => one2.id === id);
  const likeliest = likeliestCase(facts);
  if (rule === void 0 || likeliest === null) return [];
  const adapters = sideAdapters(facts, stock.adapters);
  const cases = [likeliest, ...gripCases({ facts, adapters })];
  return adapters.flatMap((adapter) => {
    const missed = cases.filter((gripCase) => rule.speaks({ ...facts, adapter, extensions: [], gripCase }));
    const nearest = missed.toSorted((a, b) => missedBy(adapter, a) - missedBy(adapter, b))[0];
    if (nearest === void 0) return [];
    const finding = () => findingOf(rule, { ...facts, adapter, extensions: [], gripCase: nearest });
    return [{ finding, part: adapter.number, broken: missed.length / cases.length + missedBy(adapter, nearest) }];
  });
}
function missedBy({ facts }, gripCase) {
  if (gripCase.kind === "wheel") {
    const { low, high } = facts.wheel?.diameter ?? { low: 0, high: 0 };
    return Math.max(0, low - gripCase.diameter_m, gripCase.diameter_m - high);
  }
  const across = gripCase.acrossFlats_m ?? 0;
  const nearest = Math.min(...(facts.sockets ?? []).map((socket) => Math.abs(socket.acrossFlats - across)), 1);
  const long = (facts.length?.high ?? facts.height) - gripCase.depth_m;
  return nearest + Math.max(0, -long);
}
var NEAREST_CORES = 8;
function tellCores(question, { id, conflict }) {
  const { facts } = question;
  const coreRule = RULES_OF.core.find((one2) => one2.id === id);
  const gripRule = RULES_OF.grip.find((one2) => one2.id === id);
  const reactionRule = RULES_OF.reaction.find((one2) => one2.id === id);
  if (coreRule === void 0 && gripRule === void 0 && reactionRule === void 0) return [];
  const others = RULES_OF.core.filter((one2) => conflict.includes(one2.id));
  const parts = RULES_OF.part.filter((one2) => one2.severity === "refusal" && conflict.includes(one2.id));
  const passes2 = (part) => part === null || !parts.some((one2) => one2.speaks({ ...facts, part }));
  const ranked = candidateCores(question, passes2).map((core) => ({ core, broken: others.filter((one2) => one2.speaks({ ...facts, core })).length + shortfall(core) })).toSorted((a, b) => a.broken - b.broken);
  if (coreRule !== void 0) {
    return ranked.flatMap(({ core, broken }) => {
      const coreFacts = { ...facts, core };
      if (!coreRule.speaks(coreFacts)) return [];
      return [
        { finding: () => findingOf(coreRule, coreFacts), part: `${core.drive.number} ${core.head.number}`, broken }
      ];
    });
  }
  return ranked.slice(0, NEAREST_CORES).flatMap((near) => {
    if (gripRule !== void 0) return tellGrips(question, { ...near, rule: gripRule });
    return reactionRule === void 0 ? [] : tellReactions(question, { ...near, rule: reactionRule, passes: passes2 });
  });
}
function shortfall(core) {
  const { opening, closing, sureAtValve } = core.figures;
  const missing = Math.max(opening.needed - opening.sure, closing.needed - closing.sure, 0);
  return missing / (missing + sureAtValve + 1);
}
function candidateCores({ facts, frames }, passes2) {
  const memo = newCoreMemo();
  return frames.frames.filter((frame) => [frame.drive, frame.limiter, frame.head].every(passes2)).flatMap(
    (frame) => frame.drive.facts.gears.map((gear, gearIndex) => ({
      drive: frame.drive,
      limiter: frame.limiter,
      head: frame.head,
      gear,
      gearIndex,
      counter: null,
      figures: coreFigures({ facts, frame, gearIndex, limiterUpTo: "needed" }, memo)
    }))
  );
}
function tellGrips({ facts, stock, frames }, at2) {
  const { core, broken, rule } = at2;
  return sideAdapters(facts, stock.adapters).flatMap((adapter) => {
    const refused = frames.chains.filter((chain) => chain.length <= 1 && couples(chain, adapter)).map((extensions) => ({ ...facts, core, adapter, extensions })).find((gripFacts) => rule.speaks(gripFacts));
    if (refused === void 0) return [];
    const lacking = 1 / (1 + adapter.facts.torqueRating);
    return [{ finding: () => findingOf(rule, refused), part: adapter.number, broken: broken + lacking }];
  });
}
var sideAdapters = (facts, adapters) => adapters.filter(
  (adapter) => (facts.duty.grip.kind === "wheel" ? adapter.facts.wheel : adapter.facts.sockets) !== void 0
);
function tellReactions({ facts, stock }, at2) {
  const { core, broken, rule } = at2;
  return reactionsOf({ restraints: stock.restraints.filter(at2.passes), stock, facts }).flatMap(
    (one2) => {
      const reaction = reactionFigures({ core, restraint: one2.restraint });
      const reactionFacts2 = { ...facts, core, ...one2, reaction };
      if (!rule.speaks(reactionFacts2)) return [];
      const lacking = 1 / (1 + one2.restraint.facts.torqueRating);
      return [{ finding: () => findingOf(rule, reactionFacts2), part: one2.restraint.number, broken: broken + lacking }];
    }
  );
}

// lib/kits/explain-none.ts
function explainNone({
  question,
  models: models2,
  constraints: constraints2
}) {
  const onLine = ALL_REFUSALS.line.filter((rule) => rule.speaks(question.facts));
  if (onLine.length > 0) {
    return { because: onLine.map((rule) => findingOf(rule, question.facts)), repairs: [] };
  }
  const conflict = conflictOf(question);
  const because = conflict === null ? [] : tellConflict({ question, conflict });
  const wished = wishFinding(question);
  return {
    because: wished === null ? because : [wished, ...because],
    repairs: findRepairs({ question, conflict: conflict ?? [], models: models2, constraints: constraints2 })
  };
}
function conflictOf(question) {
  const table2 = conflictTable(question);
  const ids = Object.values(ALL_REFUSALS).flatMap(
    (rules) => rules.map((rule) => rule.id).filter((id) => !BACKGROUND.has(id))
  );
  return minimalConflict({ items: ids, possible: (kept) => couldServe(table2, enabledRules(new Set(kept))) }).conflict;
}
function wishFinding({ wishes, facts }) {
  if (wishes.length === 0) return null;
  const numbers = wishes.map((model) => model.number);
  return {
    id: "wished-part",
    severity: "refusal",
    about: numbers,
    sentence: `${facts.line.tag} is held to ${numbers.join(", ")} by a pin or lock; nothing else is looked at.`,
    source: "A person\u2019s choice"
  };
}

// lib/kits/alternative-ids.ts
function coreId(core, accessories2) {
  return [
    `${core.drive.number}:${core.gearIndex}`,
    core.head.number,
    core.limiter?.number ?? "",
    accessories2.join(",")
  ].join("|");
}
function readCoreId(id) {
  const [source2, head, options, accessories2] = id.split("|");
  const [drive, gear] = (source2 ?? "").split(":");
  invariant(drive !== void 0 && gear !== void 0 && head !== void 0, `${id} is not the id of a core.`);
  return { drive, gear: Number(gear), head, options: list(options), accessories: list(accessories2) };
}
function gripId(elements, accessories2) {
  const chains = elements.map(
    ({ adapter, extensions }) => [...extensions.map((extension) => extension.number), adapter.number].join(">")
  );
  return `${chains.join(",")}|${accessories2.map(({ number, count }) => `${number}*${count}`).join(",")}`;
}
function readGripId(id) {
  const [chains, accessories2] = id.split("|");
  return {
    elements: list(chains).map((chain) => {
      const numbers = chain.split(">");
      return { adapter: numbers.at(-1) ?? "", extensions: numbers.slice(0, -1) };
    }),
    accessories: list(accessories2).map((text) => {
      const [number = "", count = "1"] = text.split("*");
      return { number, count: Number(count) };
    })
  };
}
function reactionId({ restraint, secondChain }) {
  return secondChain === null ? restraint.number : `${restraint.number}+${secondChain.number}`;
}
function readReactionId(id) {
  const [restraint = "", secondChain] = id.split("+");
  return { restraint, secondChain: secondChain ?? null };
}
function list(text) {
  return text === void 0 || text === "" ? [] : text.split(",");
}

// lib/kits/chain-accessories.ts
var PEGS_IN_A_SET = 8;
function coreAccessories(at2) {
  const { drive, head } = at2.core;
  if (at2.facts.place.faces === "up" || drive.mass + head.mass <= WORKING_CONSTANTS.hangingMass) return [];
  const sling = firstFitting(at2.stock, "sling support", drive.number);
  return sling === null ? [] : [sling.number];
}
function gripAccessories(at2) {
  const counts = /* @__PURE__ */ new Map();
  for (const { adapter } of at2.grip.elements) {
    const { kind } = adapter.facts;
    const spokes = at2.facts.duty.grip.wheelSpokes?.high ?? adapter.facts.wheel?.spokes.high ?? 0;
    const pegs = kind === "peg plate" ? firstFitting(at2.stock, "pegs", adapter.number) : null;
    if (pegs !== null) raise2(counts, { number: pegs.number, count: Math.max(1, Math.ceil(spokes / PEGS_IN_A_SET)) });
    const deep = (at2.facts.duty.grip.depthToNut?.high ?? 0) + WORKING_HEIGHT_M.low > GUIDED_FROM_M;
    const guide = kind === "valve key" && deep ? firstFitting(at2.stock, "key guide", adapter.number) : null;
    if (guide !== null) raise2(counts, { number: guide.number, count: 1 });
  }
  return [...counts].map(([number, count]) => ({ number, count }));
}
function firstFitting(stock, kind, number) {
  return stock.accessories.find((accessory) => accessory.facts.kind === kind && fitsPart(accessory, number)) ?? null;
}
function raise2(counts, need) {
  counts.set(need.number, Math.max(counts.get(need.number) ?? 0, need.count));
}

// lib/kits/chain-times.ts
function strokesTime({ facts, core }) {
  const { continuousRun, restAfterRun } = core.drive.facts;
  return wholeSeconds(visitStrokeTime({ facts, figures: core.figures, continuousRun, restAfterRun }));
}
function mountTime(core) {
  return wholeSeconds(WORKING_CONSTANTS.mountTime + (core.limiter?.facts.setUpTime ?? 0));
}
function counterTime(counter) {
  return wholeSeconds(counter?.facts.setUpTime ?? 0);
}
function coreTime(at2) {
  return seconds(strokesTime(at2) + mountTime(at2.core));
}
function gripTime({
  elements
}) {
  const times2 = elements.map(
    ({ adapter, extensions }) => adapter.facts.fittingTime + extensions.length * WORKING_CONSTANTS.extensionTime
  );
  return wholeSeconds(Math.max(0, ...times2));
}
function reactionTime({ restraint, secondChain }) {
  return wholeSeconds(restraint.facts.setUpTime + (secondChain === null ? 0 : WORKING_CONSTANTS.secondChainTime));
}

// lib/engineering/chance.ts
function chanceAtMost({ value, limit }) {
  const { low, nominal, high } = value;
  if (limit >= high) return ratio(1);
  if (limit < low) return ratio(0);
  if (limit < nominal) return ratio((limit - low) / (high - low) * ((limit - low) / (nominal - low)));
  return ratio(1 - (high - limit) / (high - low) * ((high - limit) / (high - nominal)));
}

// lib/kits/core-chance.ts
function coreChance({ facts, core }) {
  const { opening, closing } = facts.duty;
  const chance = Math.min(
    chanceAtMost({ value: opening.starting, limit: core.figures.opening.sure }),
    chanceAtMost({ value: closing.starting, limit: core.figures.closing.sure })
  );
  return Math.round(chance * 1e6) / 1e6;
}

// lib/kits/families.ts
function familiesOf({
  facts,
  stock,
  found
}) {
  const grips = shelf((grip) => gripAlternative({ facts, stock, grip }));
  const reactions = shelf(
    (reaction) => reactionAlternative(reactionId(reaction), reaction)
  );
  const counters = shelf(counterAlternative);
  const cores = found.map((one2) => {
    const { core } = one2;
    return {
      alternative: coreAlternative({ facts, stock, core }),
      drive: core.drive.number,
      head: core.head.number,
      grips: grips(one2.grips),
      reactions: reactions(one2.reactions),
      counters: counters(one2.counters)
    };
  });
  return group(withoutDominatedCores(cores));
}
function shelf(make) {
  const made = /* @__PURE__ */ new Map();
  const byList = /* @__PURE__ */ new Map();
  const byIds = /* @__PURE__ */ new Map();
  return (parts) => {
    const known2 = byList.get(parts);
    if (known2 !== void 0) return known2;
    const alternatives = parts.flatMap((part) => {
      if (part === null) return [];
      const alternative2 = made.get(part) ?? make(part);
      made.set(part, alternative2);
      return [alternative2];
    });
    const kept = withoutDominated(alternatives);
    const key = kept.map(({ id }) => id).join(";");
    const shared = byIds.get(key) ?? kept;
    byIds.set(key, shared);
    byList.set(parts, shared);
    return shared;
  };
}
function coreAlternative(at2) {
  const { core, facts } = at2;
  const accessories2 = coreAccessories(at2);
  const parts = [core.drive, core.head, core.limiter].flatMap((part) => part === null ? [] : [part.number]);
  return alternative(
    coreId(core, accessories2),
    [...parts, ...accessories2].map(one),
    coreTime({ facts, core }),
    coreChance({ facts, core })
  );
}
function gripAlternative(at2) {
  const { elements } = at2.grip;
  const accessories2 = gripAccessories(at2);
  const needs = [
    ...[...new Set(elements.map(({ adapter }) => adapter.number))].map(one),
    ...largestEach(elements.map(({ extensions }) => countEach(extensions.map((extension) => extension.number)))),
    ...accessories2.map(({ number, count }) => ({ item: number, count }))
  ];
  return alternative(gripId(elements, accessories2), needs, gripTime({ elements }), 1);
}
function reactionAlternative(id, reaction) {
  const { restraint, secondChain } = reaction;
  const needs = [one(restraint.number), ...secondChain === null ? [] : [one(secondChain.number)]];
  return alternative(id, needs, reactionTime(reaction), 1);
}
function counterAlternative(counter) {
  return alternative(counter.number, [one(counter.number)], counterTime(counter), 1);
}
var one = (item) => ({ item, count: 1 });
function countEach(numbers) {
  return [...new Set(numbers)].map((item) => ({ item, count: numbers.filter((number) => number === item).length }));
}
function largestEach(groups) {
  const counts = /* @__PURE__ */ new Map();
  for (const { item, count } of groups.flat()) counts.set(item, Math.max(counts.get(item) ?? 0, count));
  return [...counts].map(([item, count]) => ({ item, count }));
}
function alternative(id, needs, timePerValve, chance) {
  return { id, needs, timePerValve, cost_minor: 0, chance };
}
function needsWithin(a, b) {
  return a.every((need) => b.some((other) => other.item === need.item && other.count >= need.count));
}
function isNoBetter(worse, better) {
  if (better.timePerValve > worse.timePerValve || better.chance < worse.chance || better.needs.length > worse.needs.length || !needsWithin(better.needs, worse.needs))
    return false;
  const equal = better.timePerValve === worse.timePerValve && better.chance === worse.chance && needsWithin(worse.needs, better.needs);
  return !equal || better.id < worse.id;
}
function withoutDominated(alternatives) {
  return alternatives.filter((worse) => !alternatives.some((better) => better !== worse && isNoBetter(worse, better)));
}
function withoutDominatedCores(cores) {
  const groups = /* @__PURE__ */ new Map();
  const groupOf = cores.map((core) => {
    const key = `${core.drive}|${core.head}`;
    const group2 = groups.get(key) ?? [];
    groups.set(key, group2);
    group2.push(core);
    return group2;
  });
  const within = remembered(isWithin);
  return cores.filter(
    (worse, index) => groupOf[index]?.some(
      (better) => better !== worse && isNoBetter(worse.alternative, better.alternative) && within(worse.grips, better.grips) && within(worse.reactions, better.reactions) && within(worse.counters, better.counters)
    ) !== true
  );
}
function isWithin(a, b) {
  const ids = new Set(b.map(({ id }) => id));
  return a.every(({ id }) => ids.has(id));
}
function remembered(ask2) {
  const answers = /* @__PURE__ */ new Map();
  return (a, b) => {
    if (a === b) return true;
    const ofA = answers.get(a) ?? /* @__PURE__ */ new Map();
    answers.set(a, ofA);
    const answer = ofA.get(b) ?? ask2(a, b);
    ofA.set(b, answer);
    return answer;
  };
}
function group(cores) {
  const families = /* @__PURE__ */ new Map();
  const inOrder = [];
  for (const core of cores) {
    const ofGrips = families.get(core.grips) ?? /* @__PURE__ */ new Map();
    families.set(core.grips, ofGrips);
    const ofReactions = ofGrips.get(core.reactions) ?? /* @__PURE__ */ new Map();
    ofGrips.set(core.reactions, ofReactions);
    const family = ofReactions.get(core.counters);
    if (family !== void 0) family.push(core);
    else {
      const started = [core];
      ofReactions.set(core.counters, started);
      inOrder.push(started);
    }
  }
  return inOrder.flatMap((family, index) => {
    const [first2] = family;
    if (first2 === void 0) return [];
    return [
      {
        id: `f${index + 1}`,
        cores: family.map(({ alternative: alternative2 }) => alternative2),
        slots: [first2.grips, first2.reactions, ...first2.counters.length === 0 ? [] : [first2.counters]]
      }
    ];
  });
}

// lib/kits/find-choices.ts
function findChoices(input) {
  const tally = newTally();
  const stock = stockByRole(modelsLeft(input.models, input.constraints));
  const frames = findFrames(stock);
  const groups = groupLines(input);
  const classes = [];
  const unserved = [];
  for (const group2 of groups) {
    const [first2] = group2.lines;
    if (first2 === void 0) continue;
    const facts = factsOf({ ...first2, site: input.site });
    const question = { facts, stock, frames, refusals: ALL_REFUSALS, wishes: [], tally, made: "stock only" };
    const answer = answerWithWishes({ question, group: group2, input });
    if (answer.found.length === 0) {
      const why = explainNone({
        question: { ...question, wishes: answer.wishes },
        models: input.models,
        constraints: input.constraints
      });
      unserved.push(...group2.lines.map(({ line }) => ({ tag: line.tag, classId: group2.id, ...why })));
    } else {
      classes.push(lineClass({ group: group2, site: input.site, families: familiesOf({ facts, stock, found: answer.found }) }));
    }
  }
  const { evaluations, cores, pairs } = tally;
  return {
    classes,
    unserved,
    effort: {
      classes: groups.length,
      frames: frames.frames.length,
      frame_evaluations: frames.evaluations,
      rule_evaluations: evaluations,
      cores,
      pairs
    }
  };
}
function factsOf({ line, duty, site }) {
  return { line, duty, site, place: placeOf({ line, duty, site }) };
}
function searchStockFirst(question) {
  const found = searchClass({ ...question, made: "stock only" });
  return found.length > 0 ? found : searchClass({ ...question, made: "made to order too" });
}
function groupLines({ lines: lines2, constraints: constraints2 }) {
  const groups = /* @__PURE__ */ new Map();
  const taken = /* @__PURE__ */ new Set();
  for (const one2 of lines2) {
    const pinned = constraints2.pins.filter((pin) => pin.tag === one2.line.tag).map((pin) => pin.part);
    const key = `${classKey(one2.line, one2.duty)} ${pinned.join(" ")}`;
    const known2 = groups.get(key);
    if (known2 !== void 0) {
      known2.lines.push(one2);
      continue;
    }
    let id = shortName(key);
    while (taken.has(id)) id = `${id}x`;
    taken.add(id);
    groups.set(key, { id, lines: [one2], pinned });
  }
  return [...groups.values()];
}
function answerWithWishes(at2) {
  const { question, group: group2, input } = at2;
  const byNumber = (numbers) => numbers.flatMap((number) => question.stock.all.find((model) => model.number === number) ?? []);
  let wishes = byNumber(group2.pinned);
  if (wishes.length < group2.pinned.length) return { found: [], wishes };
  for (const locked of byNumber(input.constraints.lockedParts)) {
    const more = [...wishes, locked];
    const held = { ...question, wishes: more };
    if (canBeServed(held) || canBeServed({ ...held, made: "made to order too" })) wishes = more;
  }
  return { found: searchStockFirst({ ...question, wishes }), wishes };
}
function lineClass(at2) {
  const { lines: lines2, id } = at2.group;
  const access = lines2[0]?.line.place.accessTime?.nominal ?? 0;
  return {
    id,
    tags: lines2.map(({ line }) => line.tag),
    qty: lines2.reduce((sum, { line }) => sum + line.qty, 0),
    moveTime: seconds(at2.site.moveMinutes * 60 + access),
    families: at2.families
  };
}

// lib/engineering/direction.ts
function opposite(sense) {
  return sense === "clockwise" ? "anticlockwise" : "clockwise";
}
function wheelTurns({
  movement,
  closes
}) {
  if (closes === "unknown") return "unknown";
  return movement === "closing" ? closes : opposite(closes);
}
function selectOnDrive({
  movement,
  closes,
  reversals
}) {
  const wheel = wheelTurns({ movement, closes });
  if (wheel === "unknown") return "try gently first: direction unknown";
  return reversals % 2 === 0 ? wheel : opposite(wheel);
}

// lib/kits/assembly-findings.ts
function assemblyFindings({ whole: whole3, accessories: accessories2 }) {
  const { core, links, restraint, secondChain, reaction } = whole3;
  const facts = { line: whole3.line, duty: whole3.duty, site: whole3.site, place: whole3.place };
  const parts = [...chainModels(whole3), ...accessories2.map(({ model }) => model)];
  const grips = links.map((link) => ({ ...facts, core, ...link }));
  return onceEach([
    ...said3(RULES_OF.line, [facts]),
    ...said3(
      RULES_OF.part,
      parts.map((part) => ({ ...facts, part }))
    ),
    ...said3(
      RULES_OF.link,
      links.map((link) => ({ ...facts, ...link }))
    ),
    ...said3(RULES_OF.core, [{ ...facts, core }]),
    ...said3(RULES_OF.grip, grips),
    ...said3(RULES_OF.reaction, [{ ...facts, core, restraint, secondChain, reaction }]),
    ...said3(RULES_OF.whole, [whole3])
  ]);
}
function chainModels({ core, links, restraint }) {
  const options = [core.limiter, core.counter].flatMap((option) => option === null ? [] : [option]);
  const gripping = links.flatMap(({ adapter, extensions }) => [...extensions, adapter]);
  return [.../* @__PURE__ */ new Set([core.drive, core.head, ...options, ...gripping, restraint])];
}
function said3(rules, facts) {
  return rules.flatMap((rule) => facts.flatMap((one2) => judge(rule, one2) ?? []));
}
function onceEach(findings) {
  const seen = /* @__PURE__ */ new Set();
  return findings.filter(({ id, sentence }) => {
    const key = `${id} ${sentence}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

// lib/kits/step-values.ts
var PLATE = "Facts of the part";
var PRACTICE12 = "Common practice, no source";
var JUDGEMENT = "Judgement, no source";
function fixed(symbol, name, value, unit, source2 = PLATE) {
  return {
    symbol,
    name,
    low: value,
    nominal: value,
    high: value,
    unit,
    basis: source2 === PLATE ? "stated" : source2 === PRACTICE12 || source2 === JUDGEMENT ? "rule of thumb" : "computed",
    source: source2
  };
}
function asInput(symbol, name, value) {
  const { low, nominal, high, unit, basis, source: source2 } = value;
  return { symbol, name, low, nominal, high, unit, basis, source: source2 };
}
function result(unit, range, basis) {
  return known(unit, range, {
    basis: basis === "rule of thumb" || basis === "assumed" ? basis : "computed",
    source: "Worked out from the values named."
  });
}
var just = (value) => ({ low: value, nominal: value, high: value });
function factorInput({ whole: whole3 }) {
  return factorOf(`Torque factor of head ${whole3.core.head.number}`, whole3.core.figures.factor);
}
function factorOf(name, { low, high }) {
  return {
    symbol: "k",
    name,
    low,
    nominal: (low + high) / 2,
    high,
    unit: "1",
    basis: "stated",
    source: PLATE
  };
}

// lib/kits/movement-steps.ts
function speedStep(input, direction) {
  const { core, duty } = input.whole;
  const way = core.figures[direction];
  const low = Math.min(way.speed, way.fastest);
  return {
    id: `speed-${direction}`,
    name: `Speed at the valve, ${direction}`,
    formula: "n = n_tool(T_run/k)/i, from the torque\u2013speed line of the gear",
    inputs: [
      asInput("T_run", "Running torque", duty[direction].running),
      fixed("n0", `Free speed of gear \u201C${core.gear.name}\u201D`, core.gear.freeSpeed, "1/min"),
      fixed("Ts", `Stall torque of gear \u201C${core.gear.name}\u201D`, core.gear.stallTorque, "N\xB7m"),
      fixed("i", `Ratio of head ${core.head.number}`, core.head.facts.ratio, "1"),
      factorInput(input)
    ],
    result: result("1/min", { low, nominal: low, high: way.fastest }, duty[direction].running.basis),
    source: "Linear machine T/Ts + n/n0 = 1, or the tabulated curve of the drive."
  };
}
function timeStep({ whole: whole3 }, direction) {
  const way = whole3.core.figures[direction];
  const { low, high } = way.strokeTime;
  const slowest = Math.min(way.speed, way.fastest);
  return {
    id: `stroke-time-${direction}`,
    name: `Time of one stroke, ${direction}`,
    formula: "t = t0 + f\xB7(N \u2212 Ns)\xB760/n + Ns\xB760/ns; at the least with f = 1 and the highest n",
    inputs: [
      asInput("N", "Turns", whole3.duty.turns),
      {
        ...fixed("n", "Speed at the valve", slowest, "1/min", "The step of the speed"),
        high: way.fastest
      },
      fixed("f", "Powered turns worked to and fro", toAndFro(whole3), "1", PRACTICE12),
      fixed("Ns", "Slow turns at both ends", WORKING_CONSTANTS.slowTurns, "turn", PRACTICE12),
      fixed("ns", "Speed over the slow turns", WORKING_CONSTANTS.slowSpeed, "1/min", PRACTICE12),
      fixed("t0", "Starting", WORKING_CONSTANTS.startTime, "s", PRACTICE12)
    ],
    result: result("s", { low, nominal: (low + high) / 2, high }, whole3.duty.turns.basis),
    source: "Kinematics; the shares are common practice, no source."
  };
}
var toAndFro = (whole3) => isStiff(whole3) ? WORKING_CONSTANTS.toAndFro : 1;
var basisOf = ({ basis }) => basis;
function energyStep({ whole: whole3, figures }) {
  const { duty } = whole3;
  return {
    id: "energy-per-visit",
    name: "Work at the valve for a visit, at most",
    formula: "W = f\xB7\u03A3 strokes 2\u03C0\xB7(Ns\xB7(T_start + T_run)/2 + (N \u2212 Ns)\xB7T_run), each way with its own torques",
    inputs: [
      asInput("N", "Turns", duty.turns),
      asInput("T_start", "Starting torque, opening", duty.opening.starting),
      asInput("T_run", "Running torque, opening", duty.opening.running),
      asInput("T_start\u2032", "Starting torque, closing", duty.closing.starting),
      asInput("T_run\u2032", "Running torque, closing", duty.closing.running),
      fixed("f", "Powered turns worked to and fro", toAndFro(whole3), "1", PRACTICE12),
      fixed("Ns", "Turns over which the torque falls", WORKING_CONSTANTS.startingTurns, "turn", PRACTICE12),
      fixed("strokes", "Strokes of a visit", duty.strokes, "1")
    ],
    result: result(
      "J",
      just(figures.energyPerVisit),
      worstBasis([duty.turns, ...DIRECTIONS.flatMap((way) => [duty[way].starting, duty[way].running])].map(basisOf))
    ),
    source: "Definition of work; the shape is common practice, no source."
  };
}
function visitStep({ whole: whole3, figures }) {
  return {
    id: "time-per-valve",
    name: "Time at the valve",
    formula: "t = set-up + strokes + rests",
    inputs: [
      fixed("set-up", "Mounting, adapter, restraint, options", figures.setUpTime, "s", PRACTICE12),
      fixed("strokes", "All strokes with rests", figures.timePerValve - figures.setUpTime, "s", "Stroke times")
    ],
    result: result("s", just(figures.timePerValve), whole3.duty.turns.basis),
    source: "Sum; moving and access come on top."
  };
}

// lib/kits/torque-steps.ts
function stallStep(input) {
  const { core } = input.whole;
  return {
    id: "stall-at-valve",
    name: "Highest torque at the valve when nothing limits it",
    formula: "T = T_stall \xB7 k_high",
    inputs: [
      fixed("T_stall", `Highest stall torque of ${core.drive.number}`, core.figures.stallAtDrive, "N\xB7m"),
      factorInput(input)
    ],
    result: result("N\xB7m", just(core.figures.stallAtValve), "computed"),
    source: "T_out = T_in \xB7 ratio \xB7 efficiency: T. H. Wentzell, Machine Design, Example 13.6."
  };
}
function sureStep(input) {
  const { core } = input.whole;
  return {
    id: "sure-at-valve",
    name: "Torque that the chain surely gives while running",
    formula: "T = T_rated \xB7 s \xB7 k_low",
    inputs: [
      fixed(
        "T_rated",
        `Rated torque of ${core.drive.number} in gear \u201C${core.gear.name}\u201D`,
        core.gear.ratedTorque,
        "N\xB7m"
      ),
      fixed(
        "s",
        "Share that the supply leaves",
        core.figures.sureAtValve / (core.gear.ratedTorque * core.figures.factor.low),
        "1",
        "Air pressure after the hose, altitude and heat"
      ),
      factorInput(input)
    ],
    result: result("N\xB7m", just(core.figures.sureAtValve), "computed"),
    source: "T_out = T_in \xB7 ratio \xB7 efficiency: T. H. Wentzell, Machine Design, Example 13.6."
  };
}
function limiterSteps(input, direction) {
  const { limiter } = input.whole.core.figures;
  if (limiter === null) return [];
  const { unseat, run, seat } = input[direction];
  const purposes = [
    ["unseat", unseat],
    ["run", run],
    ["seat", seat]
  ];
  return purposes.flatMap(
    ([purpose, setting]) => setting === null ? [] : [limiterStep(input, { direction, purpose, setting })]
  );
}
function limiterStep({ whole: whole3 }, at2) {
  const duty = whole3.duty[at2.direction];
  const { limiter } = whole3.core.figures;
  const { starting, running, neverExceed: neverExceed2 } = duty;
  const wanted = at2.direction === "opening" && at2.purpose === "run" ? running : starting;
  const basis = worstBasis([wanted.basis, neverExceed2.torque.basis]);
  return {
    id: `limiter-${at2.purpose}-${at2.direction}`,
    name: `Limiter ${limiter?.number ?? ""} to ${at2.purpose}, ${at2.direction}`,
    formula: "start = T_0/k_high; ceiling \u2264 (T_never,low/k_high \u2212 o)/(1 + e); needed = T_high\xB7m/((1 \u2212 e)\xB7k_low); all to whole steps",
    inputs: [
      asInput("T", "Torque that the purpose needs", wanted),
      fixed("T_0", "Least torque that may do", leastOf(at2, duty), "N\xB7m", "The lower ends of the torques needed"),
      asInput("T_never", `What the valve must never see (${neverExceed2.kind})`, neverExceed2.torque),
      fixed("m", "Margin of the house", LIMITER_MARGIN, "1", PRACTICE12),
      fixed("e", "Error of the limiter", limiter?.error ?? 0, "1"),
      fixed("o", "What comes after the trip", limiter?.overshoot ?? 0, "N\xB7m"),
      factorOf("Torque factor from limiter to valve", limiter?.factor ?? { low: 1, high: 1 })
    ],
    result: result("N\xB7m", { low: at2.setting.start, nominal: at2.setting.start, high: at2.setting.ceiling }, basis),
    source: "Limiter window: a setting read with error e gives between (1 \u2212 e) and (1 + e) of it; the margin is common practice."
  };
}
function leastOf({ direction, purpose }, { starting, running }) {
  if (purpose === "unseat") return starting.low;
  if (direction === "opening" || purpose === "seat") return running.low;
  return Math.min(running.low, starting.low);
}
function reactionStep({ whole: whole3 }) {
  const { restraint, reaction, core } = whole3;
  const single = restraint.facts.sideLoad === "single anchor";
  return {
    id: "reaction-force",
    name: `Pull in ${restraint.number}`,
    formula: single ? "F = c\xB7T/(a\xB7sin \u03B2)" : "F = c\xB7T/(2\xB7a\xB7sin \u03B2), two points pull",
    inputs: [
      fixed(
        "T",
        "Highest torque about the valve\u2019s axis",
        core.figures.highestAtValve,
        "N\xB7m",
        "Stall, or the limiter at its ceiling with its error"
      ),
      fixed("a", "Shortest arm", reaction.arm_m, "m"),
      fixed("\u03B2", "Least angle between arm and pull", WORKING_CONSTANTS.pullAngle, "\xB0", PRACTICE12),
      fixed("c", "Shock of a stall", WORKING_CONSTANTS.shock, "1", JUDGEMENT)
    ],
    result: result("N", just(reaction.force), "rule of thumb"),
    source: "Statics; the shock factor is judgement, no source."
  };
}

// lib/kits/assembly-steps.ts
function assemblySteps(input) {
  return [
    stallStep(input),
    sureStep(input),
    ...DIRECTIONS.flatMap((direction) => limiterSteps(input, direction)),
    ...DIRECTIONS.map((direction) => speedStep(input, direction)),
    ...DIRECTIONS.map((direction) => timeStep(input, direction)),
    reactionStep(input),
    energyStep(input),
    visitStep(input)
  ];
}

// lib/kits/resolve-parts.ts
var isOfRole = (model, role) => model?.role === role;
function resolveParts(at2) {
  const { facts, parts } = at2;
  const find = (number, role) => {
    const model = at2.models.find((one2) => one2.number === number);
    invariant(isOfRole(model, role), `The catalogue has no ${role} ${number}.`);
    return model;
  };
  const drive = find(parts.drive, "drive");
  const head = find(parts.head, "head");
  const options = parts.options.map((number) => find(number, "option"));
  const limiter = options.find((option) => option.facts.kind === "torque limiter") ?? null;
  const counter = options.find((option) => option.facts.kind === "turns counter") ?? null;
  const gear = drive.facts.gears[parts.gear];
  invariant(gear !== void 0, `Drive ${drive.number} has no gear ${parts.gear}.`);
  const links = parts.adapters.map((number, index) => ({
    adapter: find(number, "adapter"),
    extensions: (parts.adapterExtensions?.[index] ?? parts.extensions).map((extension) => find(extension, "extension"))
  }));
  const restraint = find(parts.restraint, "restraint");
  const limiterUpTo = torqueCap({ drive, head, links, restraint });
  const frame = { drive, limiter, head, output: head.facts.output };
  const figures = coreFigures({ facts, frame, gearIndex: parts.gear, limiterUpTo });
  const core = { drive, gear, gearIndex: parts.gear, limiter, head, counter, figures };
  const accessories2 = parts.accessories.map(({ number, count }) => ({ model: find(number, "accessory"), count }));
  return {
    limiterUpTo,
    whole: {
      ...facts,
      core,
      restraint,
      secondChain: accessories2.find(({ model }) => model.facts.kind === "second chain")?.model ?? null,
      reaction: reactionFigures({ core, restraint }),
      links
    },
    accessories: accessories2
  };
}

// lib/kits/build-assembly.ts
function buildAssembly({ lineDuty, site, models: models2, parts }) {
  const chain = resolveParts({ facts: factsOf({ ...lineDuty, site }), models: models2, parts });
  const opening = directionSettings(chain, "opening");
  const closing = directionSettings(chain, "closing");
  const figures = figuresOf2(chain);
  return {
    id: assemblyId(parts),
    parts,
    opening,
    closing,
    figures,
    findings: assemblyFindings(chain),
    steps: assemblySteps({ whole: chain.whole, opening, closing, figures })
  };
}
function assemblyId(parts) {
  const accessories2 = parts.accessories.map(({ number, count }) => count === 1 ? number : `${number}*${count}`);
  return [
    `${parts.drive}:${parts.gear}`,
    parts.head,
    ...parts.options,
    ...parts.adapters.flatMap((adapter, index) => [...parts.adapterExtensions?.[index] ?? parts.extensions, adapter]),
    parts.restraint,
    ...accessories2
  ].join("+");
}
function directionSettings({ whole: whole3, limiterUpTo }, direction) {
  const { core, duty } = whole3;
  const { limiter } = core.figures;
  const limits = limiter !== null && (limiter.bothDirections || direction === "opening");
  const settings = limits ? limiterSettings({ limiter, duty: duty[direction], direction, upTo: limiterUpTo }) : NO_SETTINGS;
  const way = core.figures[direction];
  return {
    ...settings,
    strokeTime: way.strokeTime,
    speed: way.speed,
    select: selectOnDrive({
      movement: direction,
      closes: duty.closes,
      reversals: core.head.facts.reverses ? 1 : 0
    })
  };
}
function figuresOf2({ whole: whole3, accessories: accessories2 }) {
  const { core, duty, reaction, restraint, secondChain, links } = whole3;
  const { figures } = core;
  const pieces = [...chainModels(whole3).map((model) => ({ model, count: 1 })), ...accessories2];
  const grip = gripTime({ elements: links });
  const setUpTime = seconds(
    mountTime(core) + counterTime(core.counter) + grip + reactionTime({ restraint, secondChain })
  );
  return {
    stallAtValve: figures.stallAtValve,
    highestAtValve: figures.highestAtValve,
    sureAtValve: figures.sureAtValve,
    totalRatio: figures.totalRatio,
    limiterRequired: figures.limiterRequired,
    counterRequired: duty.countTurns,
    reactionForce: reaction.force,
    sideLoad: reaction.sideLoad,
    energyPerVisit: figures.energyPerVisit,
    setUpTime,
    timePerValve: seconds(setUpTime + strokesTime({ facts: whole3, core })),
    mass: kilograms(pieces.reduce((sum, { model, count }) => sum + model.mass * count, 0)),
    heaviestPiece: kilograms(Math.max(...pieces.map(({ model }) => model.mass))),
    chance: coreChance({ facts: whole3, core })
  };
}

// lib/kits/best-combinations.ts
function bestOfFamily(roles) {
  const [first2 = [], ...others] = roles;
  return others.reduce((joined, role) => {
    const best = notBeaten(role);
    return notBeaten(joined.flatMap((one2) => best.map((other) => join(one2, other))));
  }, notBeaten(first2));
}
function join(one2, other) {
  return {
    ids: [...one2.ids, ...other.ids],
    measures: one2.measures.map((value, index) => value + (other.measures[index] ?? 0)),
    chance: one2.chance * other.chance
  };
}
function notBeaten(scored) {
  const kept = [];
  for (const one2 of scored.toSorted(compare)) if (!kept.some((other) => beats(other, one2))) kept.push(one2);
  return kept;
}
function compare(a, b) {
  for (let index = 0; index < a.measures.length; index += 1) {
    const difference = (a.measures[index] ?? 0) - (b.measures[index] ?? 0);
    if (difference !== 0) return difference;
  }
  if (a.chance !== b.chance) return b.chance - a.chance;
  return a.ids.join(" ") < b.ids.join(" ") ? -1 : 1;
}
function beats(a, b) {
  if (a.chance < b.chance) return false;
  for (let index = 0; index < a.measures.length; index += 1) {
    if ((a.measures[index] ?? 0) > (b.measures[index] ?? 0)) return false;
  }
  return true;
}

// lib/kits/parts-of.ts
function partsFromIds(ids) {
  const core = readCoreId(ids.core);
  const [gripText = "", reaction = "", counter] = ids.slots;
  const grip = readGripId(gripText);
  const { restraint, secondChain } = readReactionId(reaction);
  const accessories2 = [
    ...core.accessories.map((number) => ({ number, count: 1 })),
    ...grip.accessories,
    ...secondChain === null ? [] : [{ number: secondChain, count: 1 }]
  ];
  const first2 = grip.elements[0]?.extensions ?? [];
  const differ = grip.elements.some(({ extensions }) => extensions.join() !== first2.join());
  return {
    drive: core.drive,
    gear: core.gear,
    head: core.head,
    extensions: first2,
    adapters: grip.elements.map(({ adapter }) => adapter),
    ...differ ? { adapterExtensions: grip.elements.map(({ extensions }) => extensions) } : {},
    restraint,
    options: counter === void 0 ? core.options : [...core.options, counter],
    accessories: accessories2
  };
}

// lib/kits/list-assemblies.ts
function listAssemblies({ lineDuty, site, models: models2, constraints: constraints2, limit }) {
  const choices2 = findChoices({ lines: [lineDuty], site, models: models2, constraints: constraints2 });
  const scoreOf = scorer(models2);
  let joined = 0;
  const families = choices2.classes.flatMap((one2) => one2.families);
  const best = notBeaten(
    families.flatMap(({ cores, slots }) => {
      const found = bestOfFamily([cores, ...slots].map((role) => role.map(scoreOf)));
      joined += found.length;
      return found;
    })
  );
  const assemblies = best.slice(0, limit).map(
    ({ ids: [core = "", ...slots] }) => buildAssembly({ lineDuty, site, models: models2, parts: partsFromIds({ core, slots }) })
  );
  return {
    assemblies,
    more: Math.max(0, best.length - limit),
    unserved: choices2.unserved[0] ?? null,
    effort: { ...choices2.effort, best_of_families: joined }
  };
}
var GRAMS = 1e3;
function scorer(models2) {
  const byNumber = new Map(models2.map((model) => [model.number, model]));
  const known2 = /* @__PURE__ */ new Map();
  return (alternative2) => {
    const before = known2.get(alternative2);
    if (before !== void 0) return before;
    let cost = 0;
    let mass = 0;
    let pieces = 0;
    for (const { item, count } of alternative2.needs) {
      const model = byNumber.get(item);
      if (model === void 0) continue;
      cost += model.rates.day_minor * count;
      mass += Math.round(model.mass * GRAMS) * count;
      pieces += model.counted ? 0 : count;
    }
    const measures = [cost, mass, alternative2.timePerValve, pieces];
    const scored = { ids: [alternative2.id], measures, chance: alternative2.chance };
    known2.set(alternative2, scored);
    return scored;
  };
}

// lib/planning/pose-problem.ts
function pairDuties(lines2, duties) {
  return lines2.flatMap((line, index) => {
    const duty = duties[index];
    return duty ? [{ line, duty }] : [];
  });
}

// prof2-tmp.ts
var constraints = { lockedParts: [], excludedParts: [], pins: [] };
var { models } = plausibleCatalogue({ seed: 400, models: 400 });
var lines = plausibleSchedule({ seed: 401, lines: 24 });
var ld = pairDuties(lines, assessDuties({ lines, site: PLAUSIBLE_SITE }));
var cpu = () => {
  const u = process.cpuUsage();
  return u.user / 1e3;
};
var min = (f) => {
  let b = 1e9;
  for (let i = 0; i < 5; i += 1) {
    const a = cpu();
    f();
    b = Math.min(b, cpu() - a);
  }
  return b.toFixed(1);
};
for (const one2 of ld.slice(0, 7)) {
  const facts = factsOf({ ...one2, site: PLAUSIBLE_SITE });
  const stock = stockByRole(models);
  const frames = findFrames(stock);
  const q = () => ({ facts, stock, frames, refusals: ALL_REFUSALS, wishes: [], tally: newTally(), made: "stock only" });
  const qq = q();
  const found = searchStockFirst(qq);
  console.log("stock", min(() => stockByRole(models)), "frames", min(() => findFrames(stock)), "search", min(() => searchStockFirst(q())), "families", min(() => familiesOf({ facts, stock, found })), "list", process.argv[2] ? min(() => listAssemblies({ lineDuty: one2, site: PLAUSIBLE_SITE, models, constraints, limit: 12 })) : "", JSON.stringify(qq.tally), "found", found.length);
}
