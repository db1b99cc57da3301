import { globSync, readFileSync } from 'node:fs';
import ts from 'typescript';

/** Functions of other files that take a rule: which of their arguments it is. */
const TAKES_RULE: ReadonlyMap<string, number> = new Map([
  ['matching', 1],
  ['unknownName', 0],
]);

/**
 * Every word for a rule that the source gives a fault, in order: each text written for a property `rule`, and each given to a
 * function for its parameter `rule`. A rule worked out any other way is listed as its code, so that it shows.
 */
export function rulesInSource(): readonly string[] {
  const rules = new Set<string>();
  for (const path of globSync('src/{content,commands}/**/*.ts')) {
    const file = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);
    const takes = new Map([...TAKES_RULE, ...functionsTakingRule(file)]);
    walk(file, (node) => {
      for (const given of ruleGiven(node, takes)) for (const rule of wordsOf(given)) rules.add(rule);
    });
  }
  return [...rules].sort();
}

function walk(node: ts.Node, visit: (node: ts.Node) => void): void {
  visit(node);
  ts.forEachChild(node, (child) => walk(child, visit));
}

function functionsTakingRule(file: ts.SourceFile): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  walk(file, (node) => {
    if (!ts.isFunctionLike(node)) return;
    const index = node.parameters.findIndex(({ name }) => name.getText() === 'rule');
    const name = ts.isVariableDeclaration(node.parent) ? node.parent.name : node.name;
    if (index !== -1 && name !== undefined) found.set(name.getText(), index);
  });
  return found;
}

function ruleGiven(node: ts.Node, takes: ReadonlyMap<string, number>): readonly ts.Expression[] {
  if (ts.isPropertyAssignment(node) && node.name.getText() === 'rule') return [node.initializer];
  if (!ts.isCallExpression(node)) return [];
  // A method of another object may have the same name: `list.at(-1)`.
  const called = node.expression.getText().replace(/^this\./, '');
  const given = node.arguments[takes.get(called) ?? -1];
  return given === undefined ? [] : [given];
}

/** The words an expression may come to; none where it only hands on what was given elsewhere. */
function wordsOf(expression: ts.Expression): readonly string[] {
  if (ts.isStringLiteral(expression)) return [expression.text];
  if (ts.isConditionalExpression(expression))
    return [...wordsOf(expression.whenTrue), ...wordsOf(expression.whenFalse)];
  if (ts.isIdentifier(expression) || ts.isPropertyAccessExpression(expression)) return [];
  return [expression.getText()];
}
