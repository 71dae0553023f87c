/** A valve of which so much is known that the house need not look, and who asks for it: what self-service's tests begin with. */

/** A gate valve with a rising stem. */
export const KNOWN = {
  valve_type: 'gate',
  driven_by: 'handwheel',
  size: 'DN 150',
  stem: 'rising through the wheel',
  differential_pressure: '4 bar',
  condition: 'free',
  last_operated: '1 year',
  wheel_diameter: '350 mm',
};

export const CONTACT = { name: 'Mara Quist', firm: 'Quist Pipework', email: 'mara@quist.example' };

/** Cells as a person answers them, each known. */
export const answersOf = (cells: Readonly<Record<string, string>>) =>
  Object.entries(cells).map(([column, text]) => ({ column, text, unknown: 'no' as const }));
