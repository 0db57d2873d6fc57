import './no-eval.js';
import { expose } from 'comlink';
import { compute, prepare } from './compute.js';
import type { Engine } from './contract.js';

const engine: Engine = { prepare, compute };
expose(engine);
