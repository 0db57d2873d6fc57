import { Fragment, type ReactNode } from 'react';
import { localNumber } from '../locale.js';
import { needsBrackets, type Operator, parseFormula, type Formula as Tree } from './parse-formula.js';

/** A formula as it is written by hand: fractions over a line, raised powers, roots. The plain text is there for copying and screen readers. */
export function Formula({ text }: { readonly text: string }) {
  const tree = parseFormula(text);
  if (!tree) return <span>{text}</span>;
  return (
    <>
      <span className="visually-hidden">{text}</span>
      <span className="written" aria-hidden="true">
        <Part of={tree} inline={false} />
      </span>
    </>
  );
}

/** A symbol: figures that close a short name, and what follows an underscore, stand lowered. */
export function FormulaName({ name }: { readonly name: string }) {
  const [, base = name, figures, words] = /^([A-Za-z]+)(\d+)?(?:_(\w+))?$/.exec(name) ?? [];
  const low = [figures, words?.replace(/_/g, ' ')].filter(Boolean).join(' ');
  return (
    <var>
      {greek[base] ?? base}
      {low !== '' && <sub>{low}</sub>}
    </var>
  );
}

const greek: Readonly<Record<string, string>> = {
  alpha: 'α',
  theta: 'θ',
  phi: 'φ',
  Phi: 'Φ',
  eta: 'η',
  rho: 'ρ',
  sigma: 'σ',
  tau: 'τ',
  lam: 'λ',
  lambda: 'λ',
  pi: 'π',
};

/** Longest part of a fraction that is written over a line, letters; longer ones could not break at the edge of the sheet. */
const longest = 26;

function lengthOf(part: Tree): number {
  switch (part.is) {
    case 'number':
    case 'name':
      return part.text.length;
    case 'call':
      return part.name.length + 2 + part.of.reduce((sum, each) => sum + lengthOf(each) + 1, 0);
    case 'minus':
      return 1 + lengthOf(part.of);
    case '/':
      return Math.max(lengthOf(part.left), lengthOf(part.right)) + 1;
    default:
      return lengthOf(part.left) + lengthOf(part.right) + 2;
  }
}

function Part({ of: part, inline }: { readonly of: Tree; readonly inline: boolean }): ReactNode {
  switch (part.is) {
    case 'number':
      return <span>{localNumber(part.text)}</span>;
    case 'name':
      return <FormulaName name={part.text} />;
    case 'minus':
      return (
        <>
          −<Side of={part.of} operator="-" side="right" inline={inline} />
        </>
      );
    case 'call':
      return <Call name={part.name} of={part.of} inline={inline} />;
    case '/':
      return <Quotient left={part.left} right={part.right} inline={inline} />;
    case '^':
      return (
        <>
          <Side of={part.left} operator="^" side="left" inline={inline} />
          <sup>
            <Part of={part.right} inline />
          </sup>
        </>
      );
    default:
      return (
        <>
          <Side of={part.left} operator={part.is} side="left" inline={inline} />
          {signs[part.is]}
          <Side of={part.right} operator={part.is} side="right" inline={inline} />
        </>
      );
  }
}

const signs = { '+': ' + ', '-': ' − ', '*': ' · ' } as const;

interface SideProps {
  readonly of: Tree;
  readonly operator: Operator;
  readonly side: 'left' | 'right';
  readonly inline: boolean;
}

/** A part beside an operator. A fraction over a line holds together by itself. */
function Side({ of: part, operator, side, inline }: SideProps) {
  const stacked = part.is === '/' && !inline && fits(part);
  const brackets = stacked ? operator === '^' : needsBrackets(part, operator, side);
  return brackets ? (
    <>
      (<Part of={part} inline={inline} />)
    </>
  ) : (
    <Part of={part} inline={inline} />
  );
}

const fits = ({ left, right }: { readonly left: Tree; readonly right: Tree }): boolean =>
  lengthOf(left) <= longest && lengthOf(right) <= longest;

function Quotient({ left, right, inline }: { readonly left: Tree; readonly right: Tree; readonly inline: boolean }) {
  if (inline || !fits({ left, right }))
    return (
      <>
        <Side of={left} operator="/" side="left" inline={inline} /> /{' '}
        <Side of={right} operator="/" side="right" inline={inline} />
      </>
    );
  return (
    <span className="fraction">
      <span>
        <Part of={left} inline />
      </span>
      <span>
        <Part of={right} inline />
      </span>
    </span>
  );
}

function Call({ name, of, inline }: { readonly name: string; readonly of: readonly Tree[]; readonly inline: boolean }) {
  const inside = of.map((each, i) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: an argument is its place
    <Fragment key={i}>
      {i > 0 && ', '}
      <Part of={each} inline={inline} />
    </Fragment>
  ));
  const [only] = of;
  if (name === 'sqrt' && only && lengthOf(only) <= longest)
    return (
      <span className="root">
        √<span>{inside}</span>
      </span>
    );
  return (
    <>
      {name}({inside})
    </>
  );
}
