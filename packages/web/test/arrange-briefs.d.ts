// biome-ignore-all lint/suspicious/noExplicitAny: as the tests read it
import fc from 'fast-check';
/** The largest invented example, as a text to arrange. */
export declare const threeTables: any;
/** A room with tables, what stands on them, and things of every kind that has a place. */
export declare const briefs: fc.Arbitrary<{
  text: string;
  ids: string[];
}>;
/** Every length and angle of a brief as a number, in order; what is turned by nothing counts as turned by zero. */
export declare function numbersOf(data: unknown): readonly number[];
export declare const largestDifference: (a: readonly number[], b: readonly number[]) => number;
//# sourceMappingURL=arrange-briefs.d.ts.map
