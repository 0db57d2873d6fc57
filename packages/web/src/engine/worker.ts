import './no-eval.js';
import { expose } from 'comlink';
import { compute, overlayMarks, prepare } from './compute.js';
import type { Engine } from './contract.js';

const engine: Engine = { prepare, compute, overlayMarks };
expose(engine);
