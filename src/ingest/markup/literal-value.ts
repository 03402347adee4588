import { parse, type Expression } from 'acorn';
import type { PartValue } from '../../model/bench.ts';

const UNKNOWN: PartValue = { known: false };

/**
 * The value of a JavaScript expression that is written out: texts, numbers, true, false, null, and lists and maps of
 * them. Nothing is run; whatever would have to be (a name, a call, an operator) is unknown.
 */
export function literalValue(expression: string): PartValue {
  try {
    const { body } = parse(`(${expression}\n)`, { ecmaVersion: 'latest', sourceType: 'module' });
    const [statement, ...more] = body;
    return statement?.type === 'ExpressionStatement' && more.length === 0 ? valueOfNode(statement.expression) : UNKNOWN;
  } catch {
    return UNKNOWN;
  }
}

/** Whether braces hold nothing but comments. */
export function isComment(expression: string): boolean {
  try {
    return parse(expression, { ecmaVersion: 'latest', sourceType: 'module' }).body.length === 0;
  } catch {
    return false;
  }
}

function valueOfNode(node: Expression): PartValue {
  switch (node.type) {
    case 'Literal':
      return 'regex' in node && node.regex
        ? UNKNOWN
        : typeof node.value === 'bigint'
          ? UNKNOWN
          : { known: true, value: node.value };
    case 'TemplateLiteral':
      return node.expressions.length === 0 ? { known: true, value: node.quasis[0]?.value.cooked ?? '' } : UNKNOWN;
    case 'UnaryExpression':
      return node.operator === '-' && node.argument.type === 'Literal' && typeof node.argument.value === 'number'
        ? { known: true, value: -node.argument.value }
        : UNKNOWN;
    case 'ArrayExpression': {
      const values = node.elements.map((element) =>
        element === null || element.type === 'SpreadElement' ? UNKNOWN : valueOfNode(element),
      );
      return values.every((value) => value.known) ? { known: true, value: values.map(({ value }) => value) } : UNKNOWN;
    }
    case 'ObjectExpression': {
      const entries: [string, unknown][] = [];
      for (const property of node.properties) {
        if (property.type !== 'Property' || property.kind !== 'init') return UNKNOWN;
        if (property.computed || property.method || property.shorthand) return UNKNOWN;
        const { key } = property;
        const name = key.type === 'Identifier' ? key.name : key.type === 'Literal' ? String(key.value) : undefined;
        const value = valueOfNode(property.value);
        // `__proto__: …` would set what the map inherits from, not a key of it.
        if (name === undefined || name === '__proto__' || !value.known) return UNKNOWN;
        entries.push([name, value.value]);
      }
      return { known: true, value: Object.fromEntries(entries) };
    }
    default:
      return UNKNOWN;
  }
}
