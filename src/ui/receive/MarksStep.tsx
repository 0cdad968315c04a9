import { useRug } from '../call/index.ts';
import { type Mark, MarkList, MarkPad, marksAndPictures, SurveyFields } from '../condition/index.ts';
import { Notice } from '../kit/index.ts';
import { frameOf, lifeIn } from './intakeFacts.ts';
import type { RugStepProps } from './stepProps.ts';

const put = (marks: readonly Mark[], mark: Mark): readonly Mark[] =>
  marks.some((other) => other.mark === mark.mark)
    ? marks.map((other) => (other.mark === mark.mark ? mark : other))
    : [...marks, mark];

/** Everything that is there before the work begins, put on the picture. */
export function MarksStep({ rug, changeRug, faults }: RugStepProps) {
  return (
    <div className="form">
      <p className="hint">
        Go over the face in strips, then the back, the ends and the sides. Show each mark to the client.
      </p>
      <LivingThings marks={rug.marks} />
      {rug.known === null ? null : <KnownMarks rug={rug.rug} />}
      <MarkPad
        frame={frameOf(rug)}
        pictures={rug.photographs
          .filter(({ shows }) => shows !== 'label')
          .map((each) => ({ ...each, corners: rug.corners[each.photo] ?? null }))}
        marks={rug.marks}
        keptAs={`receive/${rug.rug}`}
        onMark={(mark) => changeRug((before) => ({ marks: put(before.marks, mark) }))}
        onRemove={(mark) =>
          changeRug((before) => ({ marks: before.marks.filter((other) => other.mark !== mark) }))
        }
        onCorners={(photo, corners) =>
          changeRug((before) => ({ corners: { ...before.corners, [photo]: corners } }))
        }
      />
      <SurveyFields
        value={rug.survey}
        onChange={(survey) => changeRug({ survey })}
        problem={faults['survey'] ?? null}
      />
    </div>
  );
}

/** Something alive is kept from every other rug from this moment on, not only once it is on record. */
function LivingThings({ marks }: { readonly marks: readonly Mark[] }) {
  const why = lifeIn(marks);
  if (why === null) return null;
  return (
    <Notice
      tone="stop"
      title={why === 'mould' ? 'Mould may be growing in it' : 'Insects may be living in it'}
    >
      <p>
        {why === 'mould'
          ? 'Spores spread to other rugs and can make people ill.'
          : 'Moth and beetle spread to every other wool in the house.'}{' '}
        It goes on record as in quarantine.
      </p>
      <p>
        <b>
          Bag it and seal the bag before it goes inside; wear gloves{why === 'mould' ? ' and a mask' : ''}.
        </b>{' '}
        If you have looked closely and nothing lives there, call those marks stable.
      </p>
    </Notice>
  );
}

function KnownMarks({ rug }: { readonly rug: string }) {
  const { standing } = useRug(rug);
  const { marks, frame } = marksAndPictures(standing);
  if (marks.length === 0) return null;
  return (
    <Notice tone="plain" title="Marks from earlier visits, which stay on record">
      <MarkList marks={marks} frame={frame} chosen={null} onChoose={() => {}} />
    </Notice>
  );
}
