import { findingCodes } from '../../../core/wash/index.ts';
import { findingsOf, isLookedOver } from '../../../dossier/index.ts';
import { Button, Notice, When } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { Part } from '../Part.tsx';
import { findingWords } from './findingWords.ts';

const shapes = { seen: '▲', suspected: '△', 'ruled out': '○' } as const;

/** What was found that decides what the rug can bear. */
export function FindingsPart() {
  const { standing, open, nameOf, ask } = useDossier();
  const noted = [...standing.findings].sort(
    (a, b) => Object.keys(shapes).indexOf(a.certainty) - Object.keys(shapes).indexOf(b.certainty),
  );
  const isSurveyed = isLookedOver(standing);
  const drawn = (findingsOf(standing) ?? []).filter(
    ({ code }) => !standing.findings.some(({ finding }) => finding === code),
  );
  const unasked = findingCodes.length - noted.length;
  return (
    <Part title="Findings" id="findings">
      {!isSurveyed && (
        <Notice tone="caution" title="Not looked over in this visit yet.">
          What nobody looked for is not ruled out. Go over the rug, face and back.
        </Notice>
      )}
      {isSurveyed && (
        <p className="why">
          The rug was looked over, face and back: what is neither marked nor listed here counts as not found.
        </p>
      )}
      <ul className="findings">
        {noted.map((finding) => (
          <li key={finding.finding} className={`finding finding-${finding.certainty.replace(' ', '-')}`}>
            <span aria-hidden="true" className="finding-shape">
              {shapes[finding.certainty]}
            </span>
            <div>
              <b>{findingWords(finding.finding).name}</b>: {finding.certainty}
              {finding.at === undefined ? '' : `, ${finding.at}`}
              <div className="why">
                {finding.evidence} · {nameOf(finding.by)} <When at={finding.when} />
                {finding.note === undefined ? '' : ` · ${finding.note}`}
              </div>
            </div>
            {open && (
              <Button
                tone="ghost"
                label={`Change: ${findingWords(finding.finding).name}`}
                onPress={() => ask({ kind: 'finding', finding: finding.finding })}
              >
                Change
              </Button>
            )}
          </li>
        ))}
        {drawn.map(({ code, certainty = 'seen', at }) => (
          <li key={code} className={`finding finding-${certainty.replace(' ', '-')}`}>
            <span aria-hidden="true" className="finding-shape">
              {shapes[certainty]}
            </span>
            <div>
              <b>{findingWords(code).name}</b>: {certainty}
              {at === undefined ? '' : `, ${at}`}
              <div className="why">from the marks and tests on record</div>
            </div>
            {open && (
              <Button
                tone="ghost"
                label={`Change: ${findingWords(code).name}`}
                onPress={() => ask({ kind: 'finding', finding: code })}
              >
                Change
              </Button>
            )}
          </li>
        ))}
      </ul>
      {open && (
        <Button
          tone={noted.length === 0 && !isSurveyed ? 'act' : 'ghost'}
          wide
          onPress={() => ask({ kind: 'look over' })}
        >
          {noted.length === 0 ? 'Look the rug over' : `Look it over (${unasked} not yet looked for)`}
        </Button>
      )}
    </Part>
  );
}
