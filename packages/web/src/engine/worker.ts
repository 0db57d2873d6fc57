import './no-eval.js';
import { expose } from 'comlink';
import { later, prepare, soon, whole } from './compute.js';
import type { Engine } from './contract.js';

const engine: Engine = { prepare, whole, soon, later };
expose(engine);
