import { expose } from 'comlink';
import DxfParser from 'dxf-parser';
import { type DxfContent, type DxfProblem, type LineDrawing, lineDrawing } from './dxf-lines.js';

const reader = {
  read(text: string): LineDrawing | DxfProblem {
    try {
      const content = new DxfParser().parseSync(text) as DxfContent | null;
      return content ? lineDrawing(content) : 'unreadable';
    } catch {
      return 'unreadable';
    }
  },
};
export type DxfReader = typeof reader;

expose(reader);
