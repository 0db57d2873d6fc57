import './no-eval.js';
import { expose } from 'comlink';
import { compare, cost, later, overlayMarks, prepare, soon, whole } from './compute.js';
import type { Engine } from './contract.js';

const engine: Engine = { prepare, whole, soon, later, compare, cost, overlayMarks };
expose(engine);
