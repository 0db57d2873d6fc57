/** Version of the engine: stands in every design, so that a changed method gives a changed hash. */
export const engineVersion = '0.1.0';
