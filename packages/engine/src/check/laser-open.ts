import type { Finding } from '../floor/finding.js';
import { between2 } from '../floor/geometry/vec.js';
import type { CheckContext } from './context.js';
import { open, placeOf, type Subject } from './laser-finding.js';

/** What one source states that is not computed. */
export function openFindingsOf({ laser, brief }: Subject): Finding[] {
  const one = (id: string, requirement: string, why: string): Finding =>
    open({ id: `${id}/${laser.id}`, subject: laser.id, requirement, at: placeOf(laser) }, `${laser.name}: ${why}`);
  const findings: Finding[] = [];
  const { emission } = laser;
  if (laser.wavelengthRange)
    findings.push(
      one(
        'wavelength-range',
        'Whole wavelength range of the source',
        'limits and barriers are computed at the stated wavelength only; the ends of its range can be stricter.',
      ),
    );
  if (brief?.emission.kind === 'pulsed' && brief.emission.durationRange)
    findings.push(
      one(
        'duration-range',
        'Whole range of pulse durations',
        'limits and barriers are computed at the stated duration only; shorter pulses can ask for another rating.',
      ),
    );
  if (emission.kind === 'irregular pulses')
    findings.push(one('irregular-pulses', 'Irregular pulses', 'limits of irregular trains are not computed.'));
  if (emission.kind === 'scanned')
    findings.push(
      one(
        'scanned-beam',
        'Scanned beam',
        'no credit for scanning is computed: judge the standing beam unless a monitor stops it.',
      ),
    );
  if (brief?.beam.waistAt !== undefined && brief.beam.waistAt !== 0)
    findings.push(
      one(
        'waist',
        'Beam waist away from the exit',
        'the waist is taken where the beam leaves; a waist in the room can be smaller.',
      ),
    );
  if (brief?.alignmentPower !== undefined)
    findings.push(
      one(
        'alignment',
        'Exposure during alignment',
        'results are for full power; the lower power of alignment, when most eyes are hurt, is not assessed apart.',
      ),
    );
  const changing = laser.legs.filter((l) => l.endsOn === 'lens' || l.endsOn === 'crystal');
  if (changing.length > 0)
    findings.push(
      one(
        'optics-in-path',
        'Light behind lenses and crystals',
        'a focus behind a lens and new wavelengths from a crystal are not computed: enter them as sources of their own.',
      ),
    );
  return findings;
}

/** What the laser safety of a whole space needs and no check computes yet; one finding each, and one a door. */
export function openFindingsOfProject({ design }: CheckContext): Finding[] {
  if (design.lasers.length === 0) return [];
  const one = (id: string, requirement: string, why: string): Finding =>
    open({ id, subject: 'project', requirement }, why);
  return [
    one(
      'sightlines',
      'No line of sight from a beam or bright spot to an eye outside',
      'Lines of sight over, under and between barriers are not computed; check them on site with the laser safety officer.',
    ),
    one(
      'reflections',
      'Stray reflections stay behind barriers',
      'Reflections from single optics, tools and walls are not traced; barriers are tested with the full beam in any direction instead.',
    ),
    one(
      'added-wavelengths',
      'Several sources at once',
      'Each source is tested alone; the sum of exposures by several sources on one person or barrier is not assessed.',
    ),
    {
      ...one(
        'interlock-logic',
        'Interlock stops the light when a way in opens',
        'The logic of contacts, stops and shutter is not assessed. A competent electrical or safety engineer designs and proves it.',
      ),
      decider: 'electrician',
    },
    ...design.room.doors.map((door) =>
      open(
        {
          id: `sign-text/${door.id}`,
          subject: door.id,
          requirement: 'Sign at the door says what is behind it',
          at: between2(door.from, door.to, 0.5),
        },
        `Text, words and lamp of the sign at ${door.name} are not checked against the sources; the laser safety officer sets them.`,
      ),
    ),
  ];
}
