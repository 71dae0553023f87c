/** What came of going through what waits: everything answered, or why it stopped. */
export type Sending = 'all sent' | 'no connection' | 'sign in';

export interface HouseSaid {
  readonly state: 'sent' | 'refused';
  readonly sentence: string;
}

/** Statuses at which nothing was decided: it is sent again later. */
const NOT_NOW = [408, 425, 429];

/** Sends what is kept on this device and reads what came of it; where nothing was decided, it says why. */
export async function askHouse(path: string, request: RequestInit): Promise<HouseSaid | Exclude<Sending, 'all sent'>> {
  try {
    const response = await fetch(path, { method: 'POST', ...request });
    if (response.status === 401) return 'sign in';
    if (response.status >= 500 || NOT_NOW.includes(response.status)) return 'no connection';
    const answer: unknown = await response.json();
    return { state: response.ok ? 'sent' : 'refused', sentence: sentenceOf(answer) };
  } catch {
    return 'no connection';
  }
}

function sentenceOf(answer: unknown): string {
  if (answer === null || typeof answer !== 'object') return '';
  if ('sentence' in answer && typeof answer.sentence === 'string') return answer.sentence;
  return 'title' in answer && typeof answer.title === 'string' ? answer.title : 'Refused without a reason.';
}
