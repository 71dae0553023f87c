import ts from 'typescript';

/** One exported function of a module with its docstring taken apart. */
export interface DocumentedFunction {
  readonly name: string;
  readonly line: number;
  /** Names of the parameters; those of a destructured object are its fields. */
  readonly parameters: readonly string[];
  readonly docstring: string | undefined;
}

export interface Example {
  readonly expression: string;
  readonly expected: string;
}

const order: readonly string[] = ['Formula:', '@param', '@returns', '@source', '@assumes', '@example'];

export function exportedFunctions(path: string, text: string): readonly DocumentedFunction[] {
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  return source.statements.flatMap((statement) => {
    const isExported = ts.canHaveModifiers(statement)
      ? (ts.getModifiers(statement) ?? []).some((modifier) => modifier.kind === ts.SyntaxKind.ExportKeyword)
      : false;
    if (!isExported) return [];
    const line = source.getLineAndCharacterOfPosition(statement.getStart(source)).line + 1;
    const docstring = docstringOf(statement, text);
    return functionsOf(statement).map(({ name, parameters }) => ({ name, line, parameters, docstring }));
  });
}

function functionsOf(
  statement: ts.Statement,
): readonly { readonly name: string; readonly parameters: readonly string[] }[] {
  if (ts.isFunctionDeclaration(statement) && statement.name !== undefined) {
    return [{ name: statement.name.text, parameters: parameterNames(statement.parameters) }];
  }
  if (!ts.isVariableStatement(statement)) return [];
  return statement.declarationList.declarations.flatMap(({ name, initializer }) =>
    initializer !== undefined && (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer))
      ? [{ name: name.getText(), parameters: parameterNames(initializer.parameters) }]
      : [],
  );
}

function parameterNames(parameters: readonly ts.ParameterDeclaration[]): readonly string[] {
  return parameters.flatMap(({ name }) =>
    ts.isObjectBindingPattern(name)
      ? name.elements.map((element) => (element.propertyName ?? element.name).getText())
      : [name.getText()],
  );
}

function docstringOf(statement: ts.Statement, text: string): string | undefined {
  const comments = (ts.getLeadingCommentRanges(text, statement.getFullStart()) ?? []).map(({ pos, end }) =>
    text.slice(pos, end),
  );
  const last = comments.at(-1);
  return last?.startsWith('/**') === true ? last : undefined;
}

/** What is wrong with the form of a docstring, in sentences; nothing when all is well. */
export function docstringFaults({ docstring, parameters }: DocumentedFunction): readonly string[] {
  if (docstring === undefined) return ['has no docstring'];
  const entries = entriesOf(docstring);
  const faults: string[] = [];
  const marks = entries.map(({ mark }) => mark);
  const missing = order.filter((mark) => mark !== '@param' && !marks.includes(mark));
  if (missing.length > 0) faults.push(`lacks ${missing.join(', ')}`);
  const ranks = marks.map((mark) => order.indexOf(mark));
  if (ranks.some((rank) => rank === -1)) faults.push(`has an unknown tag among ${marks.join(', ')}`);
  if (ranks.some((rank, index) => rank < (ranks[index - 1] ?? 0))) faults.push(`is out of order: ${marks.join(', ')}`);
  const described = entries
    .filter(({ mark }) => mark === '@param')
    .map(({ text }) => /^([\w$.]+) - /.exec(text)?.[1] ?? text);
  if (described.join() !== parameters.join())
    faults.push(`describes (${described.join(', ')}), takes (${parameters.join(', ')})`);
  for (const { mark, text } of entries.filter((entry) => entry.mark === '@param' || entry.mark === '@returns')) {
    if (!/\[[^\]]+\]/.test(text)) faults.push(`gives no [unit] in "${mark} ${text}"`);
  }
  if (examplesOf(docstring).length === 0) faults.push('has no example of the form `code // => value`');
  return faults;
}

export function examplesOf(docstring: string): readonly Example[] {
  return entriesOf(docstring)
    .filter(({ mark }) => mark === '@example')
    .flatMap(({ lines }) => lines)
    .flatMap((line) => {
      const [expression, expected] = line.split('// =>').map((part) => part.trim());
      return expression === undefined || expected === undefined ? [] : [{ expression, expected }];
    });
}

function entriesOf(
  docstring: string,
): readonly { readonly mark: string; readonly text: string; readonly lines: readonly string[] }[] {
  const body = docstring
    .replace(/^\/\*\*|\*\/$/g, '')
    .split('\n')
    .map((line) => line.replace(/^\s*\* ?/, '').trimEnd());
  const entries: { mark: string; lines: string[] }[] = [];
  for (const line of body) {
    const mark = /^(Formula:|@\w+)/.exec(line)?.[1];
    if (mark !== undefined) entries.push({ mark, lines: [line.slice(mark.length).trim()] });
    else entries.at(-1)?.lines.push(line.trim());
  }
  return entries.map(({ mark, lines }) => ({ mark, lines, text: lines.join(' ').trim() }));
}

/**
 * Whether a value is the printed one: numbers to the digits printed, of which there are three unless it is exact.
 * Noughts at the end of a whole number are not counted as digits: 63660000 has four.
 */
export function agreesWithPrint(actual: unknown, printed: string): boolean {
  if (typeof actual !== 'number') return JSON.stringify(actual) === JSON.stringify(evaluate(printed, {}));
  const plain = printed.toLowerCase().replaceAll('_', '');
  const expected = Number(plain);
  if (!Number.isFinite(expected)) return false;
  if (Math.abs(actual - expected) <= 1e-9 * Math.max(1, Math.abs(expected))) return true;
  const [mantissa = '', exponent = '0'] = plain.split('e');
  const [whole = '', decimals] = mantissa.replace(/^[-+]/, '').split('.');
  const noughts = decimals === undefined ? (/0*$/.exec(whole)?.[0].length ?? 0) : 0;
  const digits = `${whole.slice(0, whole.length - noughts)}${decimals ?? ''}`.replace(/^0+/, '').length;
  const lastPlace = 10 ** (Number(exponent) + noughts - (decimals?.length ?? 0));
  return digits >= 3 && Math.abs(actual - expected) <= 0.5 * lastPlace * (1 + 1e-9);
}

/** Evaluates one expression in which the given names are known. */
export function evaluate(expression: string, names: Readonly<Record<string, unknown>>): unknown {
  const work = new Function(...Object.keys(names), `"use strict"; return (${expression});`);
  return work(...Object.values(names));
}
