import { useEffect, useState } from "react";
import { SHIPPED_LESSONS } from "../../drill/course/shippedLessons";
import { Button } from "../parts/controls/Button";
import { Notice } from "../parts/Notice";
import { TOPIC_PLACES, type TopicPlace } from "./topicPlaces";
import { WordEntry } from "./WordEntry";
import type { WordGroup } from "./word";
import { WORD_GROUPS, wordOf } from "./wordTable";
import "./words.css";

const anchor = (id: string) => `word-${id}`;

/** Words that have some text in their name or meaning. */
function matching(typed: string): readonly WordGroup[] {
  const wanted = typed.trim().toLowerCase();
  return WORD_GROUPS.map((group) => ({
    ...group,
    words: group.words.filter(({ term, text }) => `${term}\n${text}`.toLowerCase().includes(wanted)),
  })).filter(({ words }) => words.length > 0);
}

function Group({ group, asked }: { readonly group: WordGroup; readonly asked: string | null }) {
  return (
    <section aria-labelledby={`words-${group.id}`}>
      <h2 id={`words-${group.id}`} className="mb-4 pt-3 text-title">
        {group.title}
      </h2>
      <ul className="plain tiles-[340px] gap-4">
        {group.words.map((word) => (
          <li
            key={word.id}
            id={anchor(word.id)}
            tabIndex={-1}
            className={word.id === asked ? "plate barred p-4 border-accent" : "plate p-4"}
          >
            <h3 className="mb-2 text-lead">
              <a
                className="no-underline hover:underline"
                href={`#/words?word=${word.id}`}
                aria-current={word.id === asked ? "true" : undefined}
              >
                {word.term}
              </a>
            </h3>
            <WordEntry {...word} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Topic({ title, words, lessons }: TopicPlace) {
  return (
    <li className="pt-4 ruled">
      <h3 className="mb-2 text-lead">{title}</h3>
      <p>
        {words.map((id, k) => (
          <span key={id}>
            {k > 0 && ", "}
            <a href={`#/words?word=${id}`}>{wordOf(id)?.term ?? id}</a>
          </span>
        ))}
        .
      </p>
      {lessons.length === 0 ? (
        <p className="mt-2 text-small text-soft">
          No lesson practices this yet. Learn it from these words and the lock’s papers.
        </p>
      ) : (
        <p className="mt-2 text-small text-soft">
          Practice it:{" "}
          {SHIPPED_LESSONS.filter(({ title }) => lessons.includes(title)).map(({ number, title, sheetId }, k) => (
            <span key={number}>
              {k > 0 && ", "}
              <a href={`#/sittings?sheet=${sheetId}`}>
                lesson {number}, {title}
              </a>
            </span>
          ))}
          .
        </p>
      )}
    </li>
  );
}

/** Every word of the trade and of this trainer, and where each subject of the questions is taught. */
export function WordsScreen({ asked }: { readonly asked: string | null }) {
  const [typed, setTyped] = useState("");
  const groups = matching(typed);
  useEffect(() => {
    if (asked === null) return;
    const place = document.getElementById(anchor(asked));
    place?.scrollIntoView({ block: "center" });
    place?.focus({ preventScroll: true });
  }, [asked]);
  return (
    <main className="words page gap-6 max-w-[1180px] pt-6 focus:outline-none" id="content" tabIndex={-1}>
      <header className="grid grid-cols-[auto_minmax(160px,320px)_1fr] items-center gap-y-3 gap-x-4 phone:grid-cols-[1fr]">
        <h1 className="col-span-full">Words</h1>
        <p className="col-span-full">What the words of the trade mean, and a few of this trainer’s own.</p>
        <label htmlFor="words-find">Find a word</label>
        <input
          id="words-find"
          type="search"
          className="field"
          value={typed}
          onChange={(event) => setTyped(event.currentTarget.value)}
        />
        <nav className="row col-span-full" aria-label="Groups of words">
          {groups.map(({ id, title }) => (
            <Button key={id} onClick={() => document.getElementById(`words-${id}`)?.scrollIntoView({ block: "start" })}>
              {title}
            </Button>
          ))}
        </nav>
        {asked !== null && wordOf(asked) === undefined && (
          <Notice className="mt-4 col-span-full">
            There is no word “{asked}” here. Look for it in the list below.
          </Notice>
        )}
      </header>
      {groups.length === 0 && <p role="status">No word matches. Try a shorter part of it.</p>}
      {groups.map((group) => (
        <Group key={group.id} group={group} asked={asked} />
      ))}
      <section aria-labelledby="words-topics">
        <h2 id="words-topics" className="mb-4 pt-3 text-title">
          What the questions ask about
        </h2>
        <ul className="plain tiles-[340px] gap-4">
          {Object.entries(TOPIC_PLACES).map(([topic, place]) => (
            <Topic key={topic} {...place} />
          ))}
        </ul>
      </section>
    </main>
  );
}
