import { signedIn } from "../../../school/wire/peopleWire";
import { type EntryField, EntryForm } from "../../parts/entry/EntryForm";
import { jsonBody } from "../../school/askServer";
import { ask, type SignedIn } from "../asking/asking";

/** A link for one use: what it makes. */
export type LinkKind = "first" | "invited" | "password";

const NAME: EntryField<"name"> = { name: "name", label: "Your name", hint: "as others see it", fill: "name" };
const LOGIN: EntryField<"login"> = {
  name: "login",
  label: "Sign-in name",
  hint: "2 letters or more",
  fill: "username",
  least: 2,
};
const NEW_PASSWORD: EntryField<"password"> = {
  name: "password",
  label: "Password",
  hint: "10 letters or more; a few words are good",
  fill: "new-password",
  least: 10,
};

const LINKS = {
  first: {
    title: "Set up your school",
    says: "You are the first instructor here, and the head of the school. You can invite other instructors later.",
    path: "/schools",
    fields: [
      { name: "school", label: "School", hint: "shown on cards and signed records", fill: "organization" },
      NAME,
      LOGIN,
      NEW_PASSWORD,
    ],
    button: "Set up the school",
  },
  invited: {
    title: "Become an instructor",
    says: "The head of your school gave you this link. It works once.",
    path: "/instructors",
    fields: [NAME, LOGIN, NEW_PASSWORD],
    button: "Sign up",
  },
  password: {
    title: "Set a new password",
    says: "This link works once. When you set the password, you are signed out everywhere else.",
    path: "/password",
    fields: [NEW_PASSWORD],
    button: "Set the password and sign in",
  },
} as const satisfies Record<LinkKind, unknown>;

interface EnterProps {
  readonly onEnter: (signedIn: SignedIn) => void;
}

/** What an instructor fills in who comes by a link for one use. @param token - the secret of the link */
export function ByLink({ kind, token, onEnter }: EnterProps & { readonly kind: LinkKind; readonly token: string }) {
  const { title, says, path, fields, button } = LINKS[kind];
  const enter = async (values: Readonly<Record<string, string>>) => {
    const answer = await ask(path, signedIn, jsonBody({ ...values, token }));
    onEnter(answer);
    // The link is used up, and goes out of the history too.
    location.replace("#/instructor");
  };
  return (
    <>
      <h1 tabIndex={-1}>{title}</h1>
      <p>{says}</p>
      <EntryForm<string> fields={fields} button={button} onEnter={enter} />
    </>
  );
}

const SIGN_IN = [
  { ...LOGIN, hint: "" },
  { name: "password", label: "Password", fill: "current-password" },
] as const satisfies readonly EntryField[];

/** Name and password. */
export function SignIn({ onEnter }: EnterProps) {
  const enter = async (values: Readonly<Record<"login" | "password", string>>) =>
    onEnter(await ask("/sign-in", signedIn, jsonBody(values)));
  return (
    <>
      <h1 tabIndex={-1}>Sign in as an instructor</h1>
      <EntryForm fields={SIGN_IN} button="Sign in" onEnter={enter} />
      <p className="text-small text-soft">
        Forgot your password? The head of your school makes a link for a new one; for the head, whoever runs the server
        does. Apprentices do not sign in here. They <a href="#/join">join a class</a>.
      </p>
    </>
  );
}
