import type { Topic } from '../floor/index.js';
import { cleanlinessTopics } from './topics/cleanliness.js';
import { comfortTopics } from './topics/comfort.js';
import { flowTopics } from './topics/flow.js';

/** Calculations of air, heat, noise and light that stand without a project. */
export const airTopics: readonly Topic[] = [...cleanlinessTopics, ...flowTopics, ...comfortTopics];
