import { useEffect, useId, useState } from 'react';
import { type SentPhotograph, sendPhotograph } from '../call/sendPhotograph.ts';
import type { ShownProblem } from '../call/shownProblem.ts';
import { Busy } from './Busy.tsx';
import { Button } from './Button.tsx';
import { forgetPicture, type KeptPicture, keepPicture, keptPictures } from './kept.ts';
import { ProblemNotice } from './Notice.tsx';
import { newId } from './newId.ts';

interface PhotoTakerProps {
  readonly label: string;
  /** Called once the server has the photograph safely. */
  readonly onTaken: (photo: SentPhotograph) => void;
  /** Names the field among all, so that a picture not yet sent is offered again after a reload. */
  readonly keptAs?: string;
  readonly tone?: 'act' | 'ghost';
}

/** Takes a photograph with the device's camera or from its gallery; works on plain http. */
export function PhotoTaker({ label, onTaken, keptAs, tone = 'ghost' }: PhotoTakerProps) {
  const id = useId();
  const field = keptAs ?? `${location.pathname}/${label}`;
  const [sending, setSending] = useState<number | null>(null);
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const [unsent, setUnsent] = useState<readonly KeptPicture[]>([]);
  useEffect(() => {
    let isHere = true;
    keptPictures(field).then((pictures) => {
      if (isHere) setUnsent(pictures);
    });
    return () => {
      isHere = false;
    };
  }, [field]);
  const send = async (picture: KeptPicture) => {
    setProblem(null);
    setSending(0);
    await keepPicture(picture);
    const sent = await sendPhotograph(picture.file, setSending);
    setSending(null);
    if (!sent.ok) {
      setProblem(sent.problem);
      // A picture the server will never take is not kept to fail again.
      if (sent.problem.status === 413 || sent.problem.status === 422) await forgetPicture(picture.id);
      setUnsent(await keptPictures(field));
      return;
    }
    await forgetPicture(picture.id);
    setUnsent(await keptPictures(field));
    onTaken(sent.value);
  };
  return (
    <div className="photoTaker">
      <label className={`btn ${tone}`} htmlFor={id} aria-disabled={sending !== null}>
        {label}
      </label>
      <input
        id={id}
        className="unseen"
        type="file"
        accept="image/*"
        capture="environment"
        disabled={sending !== null}
        onChange={async ({ target }) => {
          const files = Array.from(target.files ?? []);
          for (const file of files) await send({ id: newId(), field, file });
          target.value = '';
        }}
      />
      {sending === null ? null : <Busy words="Sending the photograph" done={sending} />}
      <ProblemNotice problem={problem} />
      {unsent.length > 0 && sending === null ? (
        <Button
          tone="ghost"
          onPress={async () => {
            for (const picture of unsent) await send(picture);
          }}
        >
          {unsent.length === 1
            ? 'Send the photograph kept here'
            : `Send ${unsent.length} photographs kept here`}
        </Button>
      ) : null}
    </div>
  );
}
