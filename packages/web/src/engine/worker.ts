import './no-eval.js';
import { expose } from 'comlink';
import { compare, compute, prepare } from './compute.js';
import type { Engine } from './contract.js';

const engine: Engine = { prepare, compute, compare };
expose(engine);
