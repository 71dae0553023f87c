/** How an enquiry comes to the house. */
export const ENQUIRY_SOURCES = ['telephone', 'mail', 'visit', 'tender', 'again after a hire', 'self-service'] as const;
