import { useState } from 'react';
import { MarkedPicture, MarkList, MarkPad, marksAndPictures, surfacesOf } from '../../condition/index.ts';
import { Button, Notice, ProblemNotice, Sheet, When } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { Part } from '../Part.tsx';
import { useForm } from '../useForm.ts';

/** The rug as it came, with every mark on it. */
export function PicturePart() {
  const { standing } = useDossier();
  const { frame, pictures, marks } = marksAndPictures(standing);
  const [at, setAt] = useState(0);
  const surfaces = surfacesOf(pictures, frame);
  const surface = surfaces[at % Math.max(surfaces.length, 1)];
  if (surface === undefined) return null;
  return (
    <div className="rug-picture">
      <MarkedPicture
        surface={surface}
        marks={marks}
        alt={`${surface.words}, with ${marks.length} marks; they are listed under Condition.`}
      />
      {surfaces.length > 1 && (
        <Button tone="ghost" wide onPress={() => setAt((at + 1) % surfaces.length)}>
          {surface.words} · next
        </Button>
      )}
    </div>
  );
}

function MarksSheet({ onClose }: { readonly onClose: () => void }) {
  const { rug, standing, visit } = useDossier();
  const { act, problem } = useForm('marks');
  const { frame, pictures, marks } = marksAndPictures(standing);
  const working = visit !== null && visit.steps.length > 0;
  return (
    <Sheet title="Marks" isOpen isWide onClose={onClose}>
      <ProblemNotice problem={problem} />
      <MarkPad
        frame={frame}
        pictures={pictures}
        marks={marks}
        keptAs={`dossier/${rug}`}
        foundDuringWork={working}
        colours={standing.colours}
        onMark={(mark) => act(mark)}
        onCorners={(photo, corners) => act({ type: 'CornersTapped', photo, corners: [...corners] })}
      />
    </Sheet>
  );
}

/** Every mark, numbered as on the picture, and whether the rug was looked over at all. */
export function ConditionPart() {
  const { standing, open, nameOf, ask } = useDossier();
  const [drawing, setDrawing] = useState(false);
  const [chosen, setChosen] = useState<string | null>(null);
  const { frame, marks } = marksAndPictures(standing);
  const survey = standing.surveys.at(-1);
  return (
    <Part id="condition" title="Condition">
      {survey === undefined ? (
        <Notice tone="caution" title="Nobody has said that it was looked over.">
          <p>Until then an empty list proves nothing, and no wet step starts.</p>
        </Notice>
      ) : (
        <p className="why">
          Looked over, {survey.sides}, {survey.light}, {nameOf(survey.by)} <When at={survey.when} />
          {survey.limits === undefined ? '' : ` · not seen: ${survey.limits}`}
        </p>
      )}
      <MarkList
        marks={marks}
        frame={frame}
        chosen={chosen}
        onChoose={(mark) => setChosen(mark === chosen ? null : mark)}
      />
      {open && (
        <div className="buttons">
          <Button tone={survey === undefined ? 'act' : 'ghost'} onPress={() => setDrawing(true)}>
            Mark something
          </Button>
          <Button tone="ghost" onPress={() => ask({ kind: 'survey' })}>
            Say it was looked over
          </Button>
        </div>
      )}
      {drawing && <MarksSheet onClose={() => setDrawing(false)} />}
    </Part>
  );
}
