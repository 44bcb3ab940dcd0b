import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';

/** Functions whose texts say what was expected or found, or why something cannot be read. */
const TELLERS = new Set(['lengthError', 'fail', 'stop', 'outOfRange']);
/** Functions that give such a text back. */
const GIVERS = new Set(['patternInWords', 'typeName', 'describeByte', 'levelExpected', 'foreignText', 'wideEncoding']);
/** Members and constants that hold one. */
const HOLDERS = new Set(['expected', 'problem', 'words']);

/** Texts that are only ever a part of others. */
const PIECES = new Set(['exactly one height in soffits']);

/** What stands for a part of a text that is only known when it is told, by its source; else 7. */
const PARTS: Readonly<Record<string, string>> = {
  words: 'trade',
  name: 'ahx',
  word: 'null',
  decimal: 'point',
  separator: 'a comma',
  held: 'finishedFloor',
  field: 'id',
  'hexByte(c)': '0x0A',
  "axis.join(' and ')": 'axis.x and axis.y',
  'levelExpected(reference)': 'a level with finishedFloor in the layout of the profile',
};

/** All English texts that reading puts into the data of findings, found in its source, with parts filled in. */
export function readPhrases(src: string): string[] {
  const found = new Set<string>();
  for (const room of ['read', 'units']) {
    for (const name of readdirSync(join(src, room), { recursive: true, encoding: 'utf8' })) {
      if (!name.endsWith('.ts')) continue;
      const source = ts.createSourceFile(
        name,
        readFileSync(join(src, room, name), 'utf8'),
        ts.ScriptTarget.ES2022,
        true,
      );
      collect(source, false, found);
    }
  }
  return [...found].filter((text) => text.includes(' ') && !PIECES.has(text)).sort();
}

function collect(node: ts.Node, isTold: boolean, found: Set<string>): void {
  if (isTold && ts.isStringLiteralLike(node)) found.add(node.text);
  else if (isTold && ts.isTemplateExpression(node)) found.add(filled(node));
  ts.forEachChild(node, (child) => {
    collect(child, tells(node, child) || (isTold && passesOn(node)), found);
  });
}

function tells(node: ts.Node, child: ts.Node): boolean {
  if (ts.isCallExpression(node))
    return node.arguments.some((one) => one === child) && TELLERS.has(nameOf(node.expression));
  if (ts.isFunctionDeclaration(node)) return child === node.body && GIVERS.has(node.name?.text ?? '');
  if (ts.isPropertyAssignment(node) || ts.isVariableDeclaration(node))
    return child === node.initializer && HOLDERS.has(node.name.getText());
  return false;
}

/** Comparisons and what is looked for in a text are not told. */
function passesOn(node: ts.Node): boolean {
  if (ts.isBinaryExpression(node)) return node.operatorToken.kind === ts.SyntaxKind.QuestionQuestionToken;
  return !ts.isCallExpression(node) && !ts.isTemplateExpression(node) && !ts.isElementAccessExpression(node);
}

function nameOf(expression: ts.Expression): string {
  return ts.isPropertyAccessExpression(expression) ? expression.name.text : expression.getText();
}

function filled({ head, templateSpans }: ts.TemplateExpression): string {
  return (
    head.text +
    templateSpans.map(({ expression, literal }) => (PARTS[expression.getText()] ?? '7') + literal.text).join('')
  );
}
