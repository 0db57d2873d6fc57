import type { Finding } from '../floor/finding.js';
import { roomCautions } from '../room/index.js';
import type { CheckContext } from './context.js';
import { accessFindings } from './room-access.js';
import { boardFindings } from './room-boards.js';
import { doorFindings } from './room-doors.js';
import { enclosureFindings } from './room-enclosures.js';
import { openFinding } from './room-finding.js';
import { gapFindings } from './room-gaps.js';
import { overheadFindings } from './room-overhead.js';
import { standingFindings } from './room-standing.js';
import { surveyFindings } from './room-survey.js';

/** The room but for its ways, which take longer: survey, things in their places, doors, sides to reach, headroom, sprinklers, boards, ways out. */
export function checkRoom(context: CheckContext): Finding[] {
  const access = accessFindings(context);
  return [
    ...surveyFindings(context),
    ...standingFindings(context),
    ...doorFindings(context),
    ...access.findings,
    ...gapFindings(context, access.places),
    ...overheadFindings(context),
    ...enclosureFindings(context),
    ...boardFindings(context),
    ...openRoomFindings(context),
  ];
}

/** What is there and only people can judge yet. */
function openRoomFindings(context: CheckContext): Finding[] {
  const { room } = context.design;
  const exits = room.doors.filter((d) => d.exit);
  const fire = {
    decider: 'fire authority' as const,
    subject: room.name,
    cautions: [roomCautions.plan, roomCautions.fire],
  };
  return [
    openFinding({
      ...fire,
      id: 'room/exits',
      requirement: 'Enough exits',
      message:
        exits.length === 0
          ? 'No door is marked as an exit, so no way out was searched.'
          : `${exits.length} ${exits.length === 1 ? 'door is' : 'doors are'} marked as an exit. Whether that is enough depends on use, area and people.`,
      required: exits.length === 0,
    }),
    openFinding({
      ...fire,
      id: 'room/escape',
      requirement: 'Escape routes',
      message:
        'Travel distance, one exit blocked, locks, marking and lighting of escape routes are not computed; the widths of the ways are.',
    }),
    ...room.exitSigns.map((s) =>
      openFinding({
        ...fire,
        id: `room/exit-sign/${s.id}`,
        subject: s.id,
        requirement: `Exit sign ${s.id} stays in view`,
        message: `Whether curtains and enclosures hide exit sign ${s.id} is not computed.`,
        required: true,
        at: s.at,
      }),
    ),
    ...(context.brief.needs.accessibleRoute
      ? [
          openFinding({
            ...fire,
            decider: 'facilities',
            id: 'room/accessible-route',
            requirement: 'Accessible route',
            message: 'Turning spaces, reach and door approach for wheelchair users are not computed.',
            required: true,
          }),
        ]
      : []),
  ];
}
