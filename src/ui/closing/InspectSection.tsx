import { useState } from 'react';
import { SurveyFields, surveyFact } from '../condition/index.ts';
import { counted } from '../dossier/figures.ts';
import { Part } from '../dossier/Part.tsx';
import {
  Button,
  Choice,
  FactList,
  Notice,
  PassageField,
  PhotoTaker,
  Picture,
  ProblemNotice,
  useKept,
  When,
} from '../kit/index.ts';
import { InspectMarks } from './InspectMarks.tsx';
import {
  blankInspection,
  type InspectionDraft,
  inspectedFact,
  measuredAfter,
  outcomeOf,
} from './inspection.ts';
import { SizeAfter } from './SizeAfter.tsx';
import { StillInIt } from './StillInIt.tsx';
import { photographFact, useClosing } from './useClosing.ts';
import './closing.css';

const odours = [
  { value: 'none', words: 'None' },
  { value: 'slight', words: 'Slight' },
  { value: 'strong', words: 'Strong' },
] as const;
const colours = [
  { value: 'unchanged', words: 'Unchanged' },
  { value: 'cleaner', words: 'Cleaner' },
  { value: 'changed', words: 'Changed', hint: 'another tone than at intake' },
] as const;

/** The last look before the rug goes home: every mark, the size, smell and colour, against the door. */
export function InspectSection({ rug }: { readonly rug: string }) {
  const closing = useClosing(rug);
  const { standing, visit, isOpen, settings, act, isBusy, problem } = closing;
  const [draft, setDraft, forget] = useKept<InspectionDraft>(`closing/${rug}/inspect`, blankInspection);
  const [isBegun, setBegun] = useState(draft !== blankInspection);
  if (visit === null) return null;
  const { inspected } = visit;
  if (inspected !== null && !isBegun)
    return (
      <Part id="inspect" title="Inspection">
        <FactList
          rows={[
            { name: 'Looked at', value: <When at={inspected.when} /> },
            ...(['improved', 'unchanged', 'worse', 'new'] as const).map((outcome) => ({
              name: outcome,
              value: counted(inspected.marks.filter((mark) => mark.outcome === outcome).length, 'mark'),
            })),
            { name: 'Smell', value: inspected.odour },
            { name: 'Colour', value: inspected.colour },
          ]}
        />
        {isOpen ? <StillInIt rug={rug} standing={standing} settings={settings} /> : null}
        {isOpen ? (
          <div className="actions">
            <Button tone="ghost" onPress={() => setBegun(true)}>
              Inspect again
            </Button>
          </div>
        ) : null}
      </Part>
    );
  if (!isOpen) return null;
  if (!isBegun)
    return (
      <Part id="inspect" title="Inspection">
        <p className="why">
          After the work, every mark from the door is looked at once more, and the size is taken again.
        </p>
        <Button tone="ghost" onPress={() => setBegun(true)}>
          Begin the inspection
        </Button>
      </Part>
    );

  const measured = measuredAfter(draft, standing);
  const fact = inspectedFact(draft, standing);
  const survey = surveyFact(draft.survey, 'after work');
  const wasMeasured = standing.measurements.some(({ occasion }) => occasion === 'intake');
  const open = standing.marks.filter((mark) => outcomeOf(draft, mark) === null).length;
  const missing = [
    ...(open > 0 ? [open === 1 ? 'one mark' : `${open} marks`] : []),
    ...(wasMeasured && measured === null ? ['the three lengths and widths'] : []),
    ...(survey === null ? ['which sides were looked over'] : []),
    ...(draft.odour === null ? ['the smell'] : []),
    ...(draft.colour === null ? ['the colour'] : []),
  ];
  const harmed = standing.marks.some((mark) => {
    const outcome = outcomeOf(draft, mark);
    return outcome === 'worse' || outcome === 'new';
  });
  const after = standing.photographs.filter(({ occasion }) => occasion === 'after work');
  const record = async () => {
    if (fact === null || survey === null) return;
    const kept = await act(...(measured === null ? [] : [measured]), survey, fact);
    if (!kept) return;
    forget();
    setBegun(false);
  };
  return (
    <Part id="inspect" title="Inspection">
      <div className="form">
        <h3>Pictures after the work</h3>
        <p className="hint">
          Tap their corners under “Put down a new mark”, and each mark is shown before and after.
        </p>
        <div className="closeUps">
          {after.map(({ photo, shows }, index) => (
            <Picture
              key={photo}
              photo={photo}
              form="thumbnail"
              alt={`After the work ${index + 1}, ${shows}`}
            />
          ))}
          {(['face', 'back'] as const).map((side) => (
            <PhotoTaker
              key={side}
              label={`Photograph the ${side} now`}
              keptAs={`inspect/${rug}/${side}`}
              onTaken={(photo) => act(photographFact(photo, side, 'after work'))}
            />
          ))}
        </div>
        <InspectMarks rug={rug} standing={standing} draft={draft} onChange={setDraft} act={act} />
        <StillInIt rug={rug} standing={standing} settings={settings} />
        {harmed ? (
          <Notice tone="stop" title="Something is worse than at intake, or new">
            <p>It is the workshop’s to explain, and the client’s to know before the rug goes home.</p>
            <p>
              <b>Photograph it, report it as an incident, and tell the client.</b>
            </p>
          </Notice>
        ) : null}
        <h3>Size now</h3>
        <SizeAfter draft={draft} standing={standing} units={settings.units} onChange={setDraft} />
        <Choice
          label="Smell"
          columns={3}
          options={odours}
          value={draft.odour}
          onChange={(odour) => setDraft({ ...draft, odour })}
          isRequired
        />
        <Choice
          label="Colour"
          columns={3}
          options={colours}
          value={draft.colour}
          onChange={(colour) => setDraft({ ...draft, colour })}
          isRequired
        />
        <SurveyFields
          mayWait={false}
          value={draft.survey}
          onChange={(next) => setDraft({ ...draft, survey: next })}
        />
        <PassageField
          label="Note"
          rows={2}
          value={draft.note}
          onChange={(note) => setDraft({ ...draft, note })}
        />
        <ProblemNotice problem={problem} />
        {missing.length > 0 ? <p className="hint">Still to say: {missing.join(', ')}.</p> : null}
        <Button isDisabled={missing.length > 0 || isBusy} onPress={record}>
          Record the inspection
        </Button>
      </div>
    </Part>
  );
}
