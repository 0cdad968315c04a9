import { useState } from 'react';
import type { Estimate } from '../../core/air/index.ts';
import { moistureRatio, ovenDryMassOf } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { figure, massWords, percentWords, temperatureWords } from '../dossier/figures.ts';
import { Part } from '../dossier/Part.tsx';
import { Button, When } from '../kit/index.ts';
import { DryingReadingSheet } from './DryingReadingSheet.tsx';

type Reading = NonNullable<ReturnType<typeof useDossier>['visit']>['readings'][number];

const shownFirst = 3;

function Line({ one, ovenDry }: { readonly one: Reading; readonly ovenDry: Estimate | null }) {
  const { settings, nameOf } = useDossier();
  const ratio = one.massKg === undefined || ovenDry === null ? null : moistureRatio(one.massKg, ovenDry);
  return (
    <li>
      <b>
        <When at={one.when} />
      </b>{' '}
      {[
        one.massKg === undefined ? '' : massWords(one.massKg, settings.units),
        ratio === null
          ? ''
          : ratio.most < 0
            ? 'lighter than the dry rug: weigh again'
            : `water ${percentWords(ratio.likely)} of dry mass (${percentWords(ratio.least)} to ${percentWords(ratio.most)})`,
        one.meter === undefined
          ? ''
          : `meter ${one.meter.map(({ reading: r, at }) => `${figure(r)} (${at})`).join(', ')}`,
        one.meterDryReference === undefined ? '' : `dry reference ${figure(one.meterDryReference)}`,
        one.pocketRh === undefined ? '' : `pocket ${percentWords(one.pocketRh)} RH`,
        one.touch === undefined ? '' : `touch ${one.touch}`,
        one.smell === undefined ? '' : `smell ${one.smell}`,
        one.whiteCloth === undefined ? '' : `white cloth ${one.whiteCloth}`,
      ]
        .filter((part) => part !== '')
        .join(' · ')}
      <span className="why">
        {[
          one.airRh === undefined ? '' : `room ${percentWords(one.airRh)} RH`,
          one.airC === undefined ? '' : temperatureWords(one.airC, settings.units),
          nameOf(one.by),
        ]
          .filter((part) => part !== '')
          .join(', ')}
      </span>
    </li>
  );
}

/** The readings taken while it dries, the newest first. */
export function ReadingPart() {
  const { standing, visit, open } = useDossier();
  const [reading, setReading] = useState(false);
  if (visit === null) return null;
  const ovenDry = ovenDryMassOf(standing, visit);
  const readings = [...visit.readings].reverse();
  const lines = (some: readonly Reading[]) =>
    some.map((one) => <Line key={one.entry} one={one} ovenDry={ovenDry} />);
  return (
    <Part id="readings" title="Readings">
      {ovenDry === null && (
        <p className="why">
          Not weighed at intake: the water in it cannot be told from its mass. Meter and pocket readings must
          carry it.
        </p>
      )}
      {open && visit.dryAccepted === null && (
        <Button wide onPress={() => setReading(true)}>
          Take a reading
        </Button>
      )}
      <ul className="plain-list readings">{lines(readings.slice(0, shownFirst))}</ul>
      {readings.length > shownFirst && (
        <details>
          <summary>{readings.length - shownFirst} earlier</summary>
          <ul className="plain-list readings">{lines(readings.slice(shownFirst))}</ul>
        </details>
      )}
      {reading && <DryingReadingSheet onClose={() => setReading(false)} />}
    </Part>
  );
}
