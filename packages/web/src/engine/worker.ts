import './no-eval.js';
import { expose } from 'comlink';
import { compare, compute, overlayMarks, prepare } from './compute.js';
import type { Engine } from './contract.js';

const engine: Engine = { prepare, compute, compare, overlayMarks };
expose(engine);
