import { useId, useState } from 'react';

/** Two pictures that lie on each other, with a slider between them. */
export function BeforeAfter({ before, after }: { readonly before: string; readonly after: string }) {
  const id = useId();
  const [share, setShare] = useState(50);
  return (
    <div className="beforeAfter">
      <div className="slid">
        <img src={after} alt="After the work" />
        <img
          src={before}
          alt="Before the work"
          style={{ clipPath: `inset(0 ${100 - share}% 0 0)` }}
          className="cover"
        />
        <span className="line" style={{ left: `${share}%` }} aria-hidden="true" />
      </div>
      <label htmlFor={id} className="slideNames">
        <span>
          before
          <span className="unseen">: how far the picture from before covers the one from after</span>
        </span>
        <span aria-hidden="true">after</span>
      </label>
      <input
        id={id}
        type="range"
        min={0}
        max={100}
        step={2}
        value={share}
        aria-valuetext={`${share} % before, ${100 - share} % after`}
        onChange={({ target }) => setShare(Number(target.value))}
      />
    </div>
  );
}
