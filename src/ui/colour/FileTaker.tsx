import { useId } from 'react';

/** Chooses or takes a photograph that stays on this device. */
export function FileTaker(props: {
  readonly label: string;
  readonly tone: 'act' | 'ghost';
  readonly onFile: (file: File) => void;
}) {
  const id = useId();
  return (
    <div className="photoTaker">
      <label className={`btn ${props.tone}`} htmlFor={id}>
        {props.label}
      </label>
      <input
        id={id}
        className="unseen"
        type="file"
        accept="image/*"
        onChange={({ target }) => {
          const file = target.files?.[0];
          if (file !== undefined) props.onFile(file);
          target.value = '';
        }}
      />
    </div>
  );
}
