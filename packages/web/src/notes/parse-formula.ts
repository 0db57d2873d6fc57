/** A formula as a tree; parentheses live in its shape and are written again where reading needs them. */
export type Formula =
  | { readonly is: 'number'; readonly text: string }
  | { readonly is: 'name'; readonly text: string }
  | { readonly is: 'call'; readonly name: string; readonly of: readonly Formula[] }
  | { readonly is: 'minus'; readonly of: Formula }
  | { readonly is: Operator; readonly left: Formula; readonly right: Formula };

export type Operator = '+' | '-' | '*' | '/' | '^';

const token = /\s*(\d+\.?\d*(?:[eE][+-]?\d+)?|\.\d+(?:[eE][+-]?\d+)?|[A-Za-z_]\w*|[-+*/^(),])/y;

function tokensOf(text: string): readonly string[] | null {
  const tokens: string[] = [];
  token.lastIndex = 0;
  while (token.lastIndex < text.trimEnd().length) {
    const match = token.exec(text);
    if (!match) return null;
    tokens.push(match[1]!);
  }
  return tokens;
}

/**
 * Reads the plain arithmetic of a calculation step: + - * / ^ (from the right), parentheses, names, calls.
 * @returns null for what is no such text; it is then shown as it is written
 */
export function parseFormula(text: string): Formula | null {
  const tokens = tokensOf(text);
  if (!tokens) return null;
  let at = 0;
  const next = () => tokens[at];
  const take = (wanted: string): boolean => {
    if (tokens[at] !== wanted) return false;
    at++;
    return true;
  };

  const chain = (operators: readonly Operator[], operand: () => Formula | null) => (): Formula | null => {
    let left = operand();
    while (left) {
      const is = operators.find((operator) => operator === next());
      if (!is) return left;
      at++;
      const right = operand();
      left = right && { is, left, right };
    }
    return null;
  };
  const sum = (): Formula | null => chain(['+', '-'], product)();
  const product = (): Formula | null => chain(['*', '/'], signed)();
  function signed(): Formula | null {
    if (take('+')) return signed();
    if (!take('-')) return power();
    const of = signed();
    return of && { is: 'minus', of };
  }
  function power(): Formula | null {
    const left = atom();
    if (!left || !take('^')) return left;
    const right = signed();
    return right && { is: '^', left, right };
  }
  function atom(): Formula | null {
    const text = next();
    if (text === undefined) return null;
    at++;
    if (text === '(') {
      const inside = sum();
      return take(')') ? inside : null;
    }
    if (/^[\d.]/.test(text)) return { is: 'number', text };
    if (!/^[A-Za-z_]/.test(text)) return null;
    return take('(') ? call(text) : { is: 'name', text };
  }
  function call(name: string): Formula | null {
    const of: Formula[] = [];
    do {
      const argument = sum();
      if (!argument) return null;
      of.push(argument);
    } while (take(','));
    return take(')') ? { is: 'call', name, of } : null;
  }

  const formula = sum();
  return formula && at === tokens.length ? formula : null;
}

const strength: Readonly<Record<Formula['is'], number>> = {
  '+': 1,
  '-': 1,
  '*': 2,
  '/': 2,
  minus: 3,
  '^': 4,
  call: 5,
  name: 5,
  number: 5,
};

/** Whether a part must stand in parentheses on this side of an operator written in one line. */
export function needsBrackets(part: Formula, operator: Operator, side: 'left' | 'right'): boolean {
  const [inner, outer] = [strength[part.is], strength[operator]];
  if (operator === '^') return side === 'left' ? inner <= outer : inner < 3;
  if (part.is === 'minus') return side === 'right' || outer > 1;
  return inner < outer || (inner === outer && side === 'right' && operator !== '+');
}
