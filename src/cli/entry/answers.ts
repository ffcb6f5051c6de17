/** What was answered so far, each as it was typed. clinic: path of the profile from the plan's folder. */
export type Answers = Partial<{
  species: string;
  sex: string;
  name: string;
  weight: string;
  owner: string;
  language: string;
  email: string;
  topic: string;
  site: string;
  bandage: string;
  /** By language where there are words in more than one. */
  reason: string | Record<string, string>;
  course: string[];
  /** A line a medicine, as ./medicine-line.ts reads it. */
  medicines: string[];
  /** As ./collar-line.ts reads it. */
  collar: string;
  items: string[];
  paid: string;
  clinician: string;
  discharged: string;
}>;

/** The profile of a clinic, each answer as it was typed. */
export type ClinicAnswers = Partial<{
  name: string;
  address: string[];
  phone: string;
  email: string;
  afterName: string;
  afterAddress: string[];
  afterPhone: string;
  country: string;
  zone: string;
  currency: string;
  language: string;
  weekdays: string;
  saturday: string;
  sunday: string;
}>;
