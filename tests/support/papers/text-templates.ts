import { readFileSync } from 'node:fs';
import ts from 'typescript';

/** A text as it stands in the source, with a figure in place of each thing that is put in. */
export interface SourceText {
  readonly file: string;
  readonly property: string;
  readonly text: string;
}

const GAP = '7';

/** Texts given to one of these properties, at any depth below it; texts inside what is put in are texts of their own. */
export function sourceTexts(file: string, properties: ReadonlySet<string>): readonly SourceText[] {
  const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
  const found: SourceText[] = [];
  const visit = (node: ts.Node, property: string): void => {
    if (isNoText(node)) return;
    if (ts.isPropertyAssignment(node)) {
      const name = node.name.getText().replace(/'/g, '');
      if (name !== 'examples') visit(node.initializer, properties.has(name) ? name : property);
      return;
    }
    const text = textOf(node);
    if (text !== undefined && property !== '') found.push({ file, property, text });
    ts.forEachChild(node, (child) => visit(child, property));
  };
  visit(source, properties.has('*') ? '*' : '');
  return found;
}

function textOf(node: ts.Node): string | undefined {
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return node.text;
  if (!ts.isTemplateExpression(node)) return undefined;
  return `${node.head.text}${node.templateSpans.map(({ literal }) => `${GAP}${literal.text}`).join('')}`;
}

function isNoText(node: ts.Node): boolean {
  return (
    ts.isImportDeclaration(node) ||
    ts.isTypeNode(node) ||
    ts.isElementAccessExpression(node) ||
    (ts.isBinaryExpression(node) && /^[!=]==/.test(node.operatorToken.getText())) ||
    (ts.isCallExpression(node) && /^(invariant|includes|join|has|say[A-Z]\w+)$/.test(lastName(node.expression)))
  );
}

function lastName(node: ts.Expression): string {
  return ts.isPropertyAccessExpression(node) ? node.name.text : node.getText();
}
