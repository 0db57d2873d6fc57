import fc from 'fast-check';

/** Properties try the same inputs on every machine: a change that breaks one is seen by whoever made it. */
fc.configureGlobal({ seed: 20_261_124 });
