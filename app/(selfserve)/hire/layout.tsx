import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { HouseMark } from '#app/_frame/house-mark.tsx';
import { strangerAsks } from '#app/_lib/stranger.ts';
import { openHouseCard } from '#lib/services/self-service/house-card.ts';
import { LANGUAGES } from '#lib/wording/language.ts';
import { say } from '#lib/wording/wording.ts';
import frameLook from './_blocks/frame.module.css';

/** A link in the address is a secret: it is handed on to no other site, and no search engine keeps it. */
export const metadata: Metadata = {
  title: { default: 'Kitwright', template: '%s · Kitwright' },
  referrer: 'same-origin',
  robots: { index: false, follow: false },
};

const OWN_NAMES = { en: 'English', de: 'Deutsch' } as const;

export default async function HireLayout({ children }: { readonly children: ReactNode }) {
  const { context, language } = await strangerAsks();
  const house = openHouseCard(context);
  return (
    <>
      <a className="skip" href="#content">
        {say(language, 'frame.skip')}
      </a>
      <header className={frameLook.head}>
        <a href="/hire" className={frameLook.name}>
          <HouseMark />
          {say(language, 'frame.name')}
        </a>
        <form
          method="post"
          action="/hire/language"
          aria-label={say(language, 'frame.language')}
          className={frameLook.languages}
        >
          {LANGUAGES.map((name) => (
            <button key={name} name="language" value={name} lang={name} aria-pressed={name === language} type="submit">
              {OWN_NAMES[name]}
            </button>
          ))}
        </form>
      </header>
      <main id="content" tabIndex={-1} className={frameLook.main}>
        {children}
      </main>
      <footer className={frameLook.foot}>
        <p>{say(language, 'frame.estimates')}</p>
        {house.ok && (
          <p>
            {house.value.name}.{' '}
            {say(language, 'frame.house', { telephone: house.value.telephone, email: house.value.email })}
          </p>
        )}
      </footer>
    </>
  );
}
