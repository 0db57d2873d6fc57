import type { Tool, ToolGroup } from '../tool.js';
import { beamTool } from './beam.js';
import { enclosureTools, onThingTools } from './on-thing.js';
import { onWallTools } from './on-wall.js';
import { roomTool } from './room.js';
import { runTool } from './run.js';
import { sourceTools } from './source.js';
import { layoutStandTools, surveyStandTools, tableTool } from './stand.js';

/** A tool keeps its own state; whoever holds several tools knows nothing about it. */
const anyState = <S>(tool: Tool<S>): Tool => tool as unknown as Tool;

/** Everything that can be drawn or put in, in the order in which a room is surveyed and fitted out. */
export const allTools: readonly Tool[] = [
  anyState(roomTool),
  ...onWallTools.map(anyState),
  anyState(tableTool),
  ...surveyStandTools.map(anyState),
  anyState(beamTool),
  ...sourceTools.map(anyState),
  ...enclosureTools.map(anyState),
  anyState(runTool),
  ...onThingTools.map(anyState),
  ...layoutStandTools.map(anyState),
];

export const toolsOf = (group: ToolGroup): readonly Tool[] => allTools.filter((tool) => tool.group === group);
