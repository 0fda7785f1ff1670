/** The questions about the vacuum with their answers, each with a sign of its own shape. */
import { CircleCheck, CircleSlash, TriangleAlert } from 'lucide-react';
import type { GoItem } from './goItems.ts';

const SIGNS = { go: CircleCheck, watch: TriangleAlert, 'no-go': CircleSlash } as const;
const WORDS = { go: 'go', watch: 'with care', 'no-go': 'no-go' } as const;

export function GoPicture({ items }: { readonly items: readonly GoItem[] }) {
  return (
    <section className="panel vacuum-go" aria-label="Go or no-go" tabIndex={0}>
      <ul>
        {items.map(({ question, answer, tone }) => {
          const Sign = SIGNS[tone];
          return (
            <li key={question} data-tone={tone}>
              <Sign aria-hidden="true" size={24} strokeWidth={1.75} />
              <div>
                <h3>
                  {question} <small>{WORDS[tone]}</small>
                </h3>
                <p>{answer}</p>
              </div>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
