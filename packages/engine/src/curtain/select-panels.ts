import { type Outcome, ok, refuse } from '../floor/problem.js';
import { negative, nothingInStock } from './messages.js';
import { type FullnessBand, panelWidthBand } from './panel-width.js';
import { compareRank } from './rank.js';
import { type PricedLength, samePlace } from './types.js';

/** What counts in the choice of panels, the first that differs decides. */
export type PanelAim = 'price' | 'panels' | 'width';

export interface PanelQuestion extends FullnessBand {
  /** Covered track [m]. */
  readonly length: number;
  /** Stock widths [m] with prices in one currency. */
  readonly stock: readonly PricedLength[];
  /** Width lost in each joint of two panels [m]. */
  readonly jointLoss: number;
  readonly aims: readonly PanelAim[];
}

export interface PanelChoice {
  readonly price: number;
  readonly panels: number;
  readonly seams: number;
  /** How many of each stock width, in the order of the stock. */
  readonly counts: readonly number[];
  /** Sum of the panel widths [m]. */
  readonly totalWidth: number;
  /** Total width less what the joints take [m]: this must lie in the band. */
  readonly flatWidth: number;
}

export interface PanelSelection {
  readonly least: number;
  readonly most: number;
  /** The best choice inside the band; null when no choice lies there. */
  readonly choice: PanelChoice | null;
  /** Best choices with the nearest flat width under and over the band; null when there is none. */
  readonly below: PanelChoice | null;
  readonly above: PanelChoice | null;
}

interface State {
  /** Sum of (width - loss): flat width is this plus one loss. */
  readonly sum: number;
  readonly price: number;
  readonly panels: number;
  readonly width: number;
  readonly last: number;
  readonly before: State | null;
}

const rankOf = (s: State, aims: readonly PanelAim[]): number[] =>
  aims.map((aim) => (aim === 'price' ? s.price : aim === 'panels' ? s.panels : s.width));

/** Sums that differ by less than a hundredth of a millimetre are one state. */
const stateOf = (sum: number): number => Math.round(sum * 1e5);

/** Best state for each sum that panels can reach up to one panel beyond `most`, in rising order of the sum. */
function reachable({ stock, jointLoss, aims }: PanelQuestion, most: number): readonly State[] {
  const states = new Map<number, State>();
  const waiting: State[] = [{ sum: 0, price: 0, panels: 0, width: 0, last: -1, before: null }];
  const done: State[] = [];
  while (waiting.length > 0) {
    let least = 0;
    for (let i = 1; i < waiting.length; i++) if (waiting[i]!.sum < waiting[least]!.sum) least = i;
    const [from] = waiting.splice(least, 1) as [State];
    if (states.get(stateOf(from.sum)) !== from && from.panels > 0) continue;
    if (from.panels > 0) done.push(from);
    if (from.sum + jointLoss > most + samePlace) continue;
    stock.forEach(({ length: width, price }, last) => {
      const next: State = {
        sum: from.sum + width - jointLoss,
        price: from.price + price,
        panels: from.panels + 1,
        width: from.width + width,
        last,
        before: from,
      };
      const known = states.get(stateOf(next.sum));
      if (known && compareRank(rankOf(known, aims), rankOf(next, aims)) <= 0) return;
      states.set(stateOf(next.sum), next);
      waiting.push(next);
    });
  }
  return done;
}

function described(state: State, { stock, jointLoss }: PanelQuestion): PanelChoice {
  const counts = stock.map(() => 0);
  for (let s: State | null = state; s && s.last >= 0; s = s.before) counts[s.last]! += 1;
  return {
    price: state.price,
    panels: state.panels,
    seams: state.panels - 1,
    counts,
    totalWidth: state.width,
    flatWidth: state.sum + jointLoss,
  };
}

/**
 * The best panels for one stretch of track out of standard widths.
 *
 *     L (1 + low) <= sum w_i x_i - o (sum x_i - 1) <= L (1 + high), both limits included
 * Exact: every flat width that panels can reach is looked at, each with its best panels (knapsack over the width).
 * @param question covered track, stock widths with prices, loss in each joint [m], band [-], order of aims
 * @returns the best choice, or null with the nearest choices below and above; `curtain/length`, `curtain/negative`,
 *          `curtain/fullness-order`, `curtain/no-stock`
 * Source: handbook of layout, 3.6 (derived); agrees with the enumeration of all choices.
 */
export function selectPanels(question: PanelQuestion): Outcome<PanelSelection> {
  const { length, stock, jointLoss, aims } = question;
  const band = panelWidthBand(length, question);
  const problems = band.ok ? [] : [...band.problems];
  if (!(jointLoss >= 0)) problems.push(negative('jointLoss', jointLoss, 'm'));
  if (stock.length === 0 || stock.some((s) => !(s.length - jointLoss > samePlace)))
    problems.push(nothingInStock('stock'));
  if (!band.ok || problems.length > 0) return refuse(problems);
  const { least, most } = band.value;
  const states = reachable(question, most);
  const flat = (s: State) => s.sum + jointLoss;
  const inside = states.filter((s) => flat(s) >= least - samePlace && flat(s) <= most + samePlace);
  const bestOf = (list: readonly State[]): State | undefined =>
    list.reduce<State | undefined>(
      (best, s) => (best && compareRank(rankOf(best, aims), rankOf(s, aims)) <= 0 ? best : s),
      undefined,
    );
  const show = (s: State | undefined) => (s ? described(s, question) : null);
  return ok({
    least,
    most,
    choice: show(bestOf(inside)),
    below: show(states.filter((s) => flat(s) < least - samePlace).at(-1)),
    above: show(states.find((s) => flat(s) > most + samePlace)),
  });
}
