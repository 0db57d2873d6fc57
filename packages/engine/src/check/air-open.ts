import { airCautions } from '../air/index.js';
import { sources } from '../air/tables.js';
import type { DesignEnclosure } from '../design/types.js';
import type { Finding } from '../floor/finding.js';
import { numberText } from '../floor/number-text.js';
import { classText } from './air-cleanliness.js';
import { cleanlinessOf, type EnclosureAir, servedBy } from './air-enclosure.js';
import { type AirSubject, airJudged, airOpen } from './air-finding.js';
import type { CheckContext } from './context.js';

/** A tail for the id of the second and later needs of the same place. */
const tails = <T extends { readonly where: string }>(needs: readonly T[]): readonly (readonly [T, string])[] =>
  needs.map((need, i) => {
    const before = needs.slice(0, i).filter((other) => other.where === need.where).length;
    return [need, before === 0 ? '' : `/${before + 1}`];
  });

/** An enclosure whose air cannot be told: said once for it and once for each class that it shall hold. */
export function withoutAir(context: CheckContext, enclosure: DesignEnclosure, why: string): Finding[] {
  const needs = cleanlinessOf(context, enclosure);
  const subject: AirSubject = {
    id: `air/flow/${enclosure.id}`,
    subject: enclosure.id,
    requirement: 'Clean air from fan filter units',
    required: needs.length > 0,
    at: enclosure.centre,
  };
  return [
    airOpen(context, subject, `The air in ${enclosure.name} is not assessed. ${why}`),
    ...needs.map((need, i) =>
      airOpen(
        context,
        {
          ...subject,
          id: `air/class/${enclosure.id}${i === 0 ? '' : `/${i + 1}`}`,
          requirement: `Forecast for ${classText(need)}`,
          decider: 'testing organisation',
          cautions: [airCautions.forecast],
        },
        `No forecast is made. ${why}`,
      ),
    ),
  ];
}

/** Classes asked for where no enclosure stands: the whole room, a bay, a partition. */
const classElsewhere = (context: CheckContext): Finding[] =>
  tails(context.brief.needs.cleanliness)
    .filter(([need]) => !context.design.enclosures.some((e) => servedBy(e, need.where)))
    .map(([need, tail]) =>
      airOpen(
        context,
        {
          id: `air/class/${need.where}${tail}`,
          subject: need.where,
          requirement: `Forecast for ${classText(need)}`,
          decider: 'testing organisation',
          required: true,
          cautions: [airCautions.forecast],
          source: sources.wellMixed,
        },
        `${need.where} is no enclosure with a roof and fan filter units; its class is not computed.`,
      ),
    );

const darkness = (context: CheckContext): Finding[] =>
  tails(context.brief.needs.darkness).map(([need, tail]) =>
    airOpen(
      context,
      {
        id: `air/darkness/${need.where}${tail}`,
        subject: need.where,
        requirement: `Not above ${numberText(need.illuminance)} lx of stray light`,
        decider: 'group',
        required: true,
        cautions: [airCautions.blackout],
        source: sources.lightTightness,
      },
      'Light through gaps and cloth depends on baffles, overlaps and edges that the design does not hold; look after 20 minutes in the dark, or measure.',
    ),
  );

const stability = (context: CheckContext): Finding[] =>
  tails(context.brief.needs.temperature)
    .filter(
      ([need]) =>
        need.stability !== undefined ||
        need.target !== undefined ||
        (need.rise !== undefined && !context.design.enclosures.some((e) => servedBy(e, need.where))),
    )
    .map(([need, tail]) =>
      airOpen(
        context,
        {
          id: `air/temperature/${need.where}${tail}`,
          subject: need.where,
          requirement: 'Temperature and its stability',
          required: true,
          source: sources.heatBalance,
        },
        `Temperature over time${need.stability === undefined ? '' : ` within ${numberText(need.stability)} K`} depends on the air conditioning of the room, which is not computed; log it.`,
      ),
    );

function monitoring(context: CheckContext): Finding[] {
  const asked = context.brief.needs.monitoring;
  return (['particles', 'pressure', 'temperature'] as const)
    .filter((kind) => asked?.[kind] === true)
    .map((kind) => {
      const count = context.design.devices.filter((device) => {
        const item = context.catalogue.byId.get(device.item);
        return item?.kind === 'sensor' && item.measures === kind;
      }).length;
      return airOpen(
        context,
        {
          id: `air/monitoring/${kind}`,
          subject: 'room',
          requirement: `Monitoring of ${kind}`,
          decider: 'group',
          required: true,
        },
        `${count === 0 ? 'The design places no sensor for it' : `The design places ${count} ${count === 1 ? 'sensor' : 'sensors'} for it`}; places, alert levels and intervals come from a monitoring plan, which is not assessed.`,
      );
    });
}

const terminals = (context: CheckContext): Finding[] =>
  context.design.room.airTerminals.map((terminal) =>
    airOpen(
      context,
      {
        id: `air/terminal/${terminal.id}`,
        subject: terminal.id,
        requirement: `Room ${terminal.kind} air and the enclosures do not disturb each other`,
        at: terminal.at,
      },
      `Draughts of this ${terminal.kind} terminal on enclosures, intakes and beams are not computed.`,
    ),
  );

/** Hazards named in the brief against enclosures that blow outwards. */
export function hazardFindings(context: CheckContext, airs: readonly EnclosureAir[]): Finding[] {
  const { hazards } = context.brief.needs;
  if (hazards.length === 0) return [];
  const requirement = 'Nothing harmful is blown out of an enclosure';
  const named = hazards.join(', ');
  if (airs.length === 0)
    return [
      airOpen(
        context,
        { id: 'air/hazard/room', subject: 'room', requirement, required: true, cautions: [airCautions.overPressure] },
        `The brief names ${named}; extraction and gas detection are not assessed. Facilities and a competent person decide.`,
      ),
    ];
  return airs.map(({ enclosure, working }) =>
    airJudged(
      context,
      {
        id: `air/hazard/${enclosure.id}`,
        subject: enclosure.id,
        requirement,
        required: true,
        cautions: [airCautions.overPressure],
        at: enclosure.centre,
      },
      {
        message: `The brief names ${named}, and ${enclosure.name} stands under over-pressure, which blows it at people. Do not use it for such work until facilities and a competent person have decided on extraction.`,
        demand: working.pressure,
        capacity: null,
        unit: 'Pa',
        utilisation: null,
        verdict: 'attention',
        steps: working.steps,
      },
    ),
  );
}

/** What the brief names and this discipline does not compute. */
export const openFindings = (context: CheckContext): Finding[] => [
  ...classElsewhere(context),
  ...darkness(context),
  ...stability(context),
  ...monitoring(context),
  ...terminals(context),
];
