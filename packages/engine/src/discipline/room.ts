import { checkRoom } from '../check/room.js';
import { wayFindings } from '../check/room-ways.js';
import { unassessedIn } from '../check/unassessed.js';
import { roomHeights, roomKeepClear, roomWays } from '../overlay/room.js';
import { roomTopics } from '../room/index.js';
import type { Discipline } from './discipline.js';

export const room: Discipline = {
  id: 'room',
  title: 'Room',
  light: [checkRoom, unassessedIn('room')],
  heavy: [wayFindings],
  overlays: [roomWays, roomKeepClear, roomHeights],
  topics: roomTopics,
};
