import { chainNumbers } from '#lib/documents/drawings/part-numbers.ts';
import type { LineDetail } from '#lib/services/lines/open-line.ts';

/** Names of an assembly's parts in the order of the torque, with the drive's gear. */
export function assemblyNames(
  { parts }: LineDetail['assemblies'][number],
  names: Readonly<Record<string, string>>,
): readonly string[] {
  const name = (number: string) => names[number] ?? number;
  return chainNumbers({ parts }).map((number) =>
    number === parts.drive && parts.gear > 1 ? `${name(number)}, gear ${parts.gear}` : name(number),
  );
}
