import { Link } from 'wouter';
import { threeFigures } from '../../../core/weave/index.ts';
import { openMassQuestion } from '../../../dossier/index.ts';
import { knotResult } from '../../../dossier/knotResult.ts';
import { sizeOf, soundClaim } from '../../../dossier/planFacts.ts';
import { Button, dayWords, FactList, type FactRow, ProblemNotice } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { figure, massWords, moneyWords, percentWords, sizeWords } from '../figures.ts';
import { claimWords } from '../identify/claimWords.ts';
import { Part } from '../Part.tsx';

/** The rug in a dozen lines. */
export function FactsPart() {
  const { standing, visit, open, settings, client, ask } = useDossier();
  const measured = standing.measurements.at(-1);
  const weighed = standing.weighings.at(-1);
  const size = sizeOf(standing);
  const unsigned = visit?.received.signature === undefined && visit?.receiptSigned === null;
  const massQuestion = open ? openMassQuestion(standing) : null;
  const knots = standing.knots.at(-1);
  const pile = soundClaim(standing, 'pile');
  const foundation = (['warp', 'weft', 'backing'] as const).flatMap((about) => {
    const claim = soundClaim(standing, about);
    return claim === undefined ? [] : [`${claim.fibre} ${about}`];
  });
  const unknown = <span className="open-fact">not known</span>;
  const rows: readonly FactRow[] = [
    {
      name: 'Size',
      value:
        measured === undefined || size === null
          ? unknown
          : `${sizeWords(measured, settings.units)}, ${figure(size.areaM2, 2)} m²`,
      ...(measured === undefined
        ? {}
        : { why: `±${figure(measured.uncertaintyMm / 10)} cm an end, without fringe` }),
    },
    {
      name: 'Mass',
      value:
        weighed === undefined || size === null
          ? ((weighed && massWords(weighed.massKg, settings.units)) ?? unknown)
          : `${massWords(weighed.massKg, settings.units)} (${figure(weighed.massKg / size.areaM2)} kg/m²)`,
      ...(weighed === undefined
        ? {}
        : {
            why: `${weighed.airRh === undefined ? 'humidity not noted' : `at ${percentWords(weighed.airRh)} RH`}${weighed.restedADay ? '' : ', not rested a day: ±5 %'}`,
          }),
    },
    { name: 'Pile', value: pile === undefined ? unknown : claimWords(pile).value },
    { name: 'Foundation', value: foundation.length === 0 ? unknown : foundation.join(', ') },
    ...(knots === undefined
      ? []
      : [
          {
            name: 'Knots',
            value: `${threeFigures(knotResult(knots).density.weftwisePerM * 0.07)} per 7 cm across`,
          },
        ]),
    { name: 'Place', value: standing.out === null ? (standing.place ?? unknown) : `out: ${standing.out.to}` },
    ...(visit === null
      ? []
      : [
          {
            name: 'Client',
            value:
              client === null || client.erased ? (
                'client’s data erased'
              ) : (
                <Link href={`/clients/${client.client}`}>{client.name}</Link>
              ),
            why: `${visit.received.authority}; ${visit.received.reason}`,
          },
          { name: 'Route', value: visit.received.route },
          ...(visit.received.declaredValue === undefined
            ? []
            : [{ name: 'Declared value', value: moneyWords(visit.received.declaredValue) }]),
          ...(visit.received.promisedFor === undefined
            ? []
            : [{ name: 'Promised', value: dayWords(visit.received.promisedFor) }]),
        ]),
  ];
  return (
    <Part id="facts" title="The rug">
      <FactList rows={rows} />
      {massQuestion === null ? null : <ProblemNotice problem={massQuestion} />}
      {open && (
        <div className="buttons">
          <Button tone="ghost" onPress={() => ask({ kind: 'measure' })}>
            Measure
          </Button>
          <Button tone="ghost" onPress={() => ask({ kind: 'weigh' })}>
            Weigh
          </Button>
          {unsigned && (
            <Button tone="ghost" onPress={() => ask({ kind: 'sign receipt' })}>
              Sign the receipt
            </Button>
          )}
        </div>
      )}
    </Part>
  );
}
