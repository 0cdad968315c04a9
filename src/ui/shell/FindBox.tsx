import { useState } from 'react';
import { useLocation } from 'wouter';

/** Finds a rug from any page. */
export function FindBox() {
  const [find, setFind] = useState('');
  const [, go] = useLocation();
  return (
    <search>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          go(`/rugs?find=${encodeURIComponent(find.trim())}`);
          setFind('');
        }}
      >
        <input
          className="find"
          type="search"
          aria-label="Find a rug by tag, client or word"
          placeholder="Find tag, client, rug…"
          value={find}
          maxLength={200}
          onChange={({ target }) => setFind(target.value)}
        />
      </form>
    </search>
  );
}
