import type { LineDetail } from '#lib/services/open-line.ts';

/** Names of an assembly's parts in the order of the torque, with the drive's gear. */
export function assemblyNames(
  { parts }: LineDetail['assemblies'][number],
  names: Readonly<Record<string, string>>,
): readonly string[] {
  const name = (number: string) => names[number] ?? number;
  return [
    parts.gear > 1 ? `${name(parts.drive)}, gear ${parts.gear}` : name(parts.drive),
    name(parts.head),
    ...parts.extensions.map(name),
    ...parts.adapters.map(name),
    name(parts.restraint),
    ...parts.options.map(name),
  ];
}
