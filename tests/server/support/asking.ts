import type { Browser, TestServer } from "./testSchool";

/** Cookies and headers that go with each request of somebody. */
export type Asker = Partial<Pick<Browser, "cookies" | "headers">>;

/** Somebody who asks a server. */
export function asking({ server }: TestServer, { cookies = {}, headers = {} }: Asker = {}) {
  return {
    get: (url: string) => server.inject({ url, cookies, headers }),
    post: (url: string, payload?: object) =>
      server.inject({ method: "POST", url, cookies, headers, ...(payload && { payload }) }),
  };
}

/** What a test asks by. */
export type Asking = ReturnType<typeof asking>;

/** What an answer is: its status and, of a refusal, the code. */
export const outcome = (response: Awaited<ReturnType<Asking["get"]>>): string =>
  response.statusCode < 400 ? String(response.statusCode) : `${response.statusCode} ${response.json().problem.code}`;

/** A class with a code, made by an instructor. */
export async function testClass(instructor: Asking, name = "Class") {
  const { id } = (await instructor.post("/api/classes", { name })).json();
  const { code } = (await instructor.post(`/api/classes/${id}/codes`, {})).json();
  return { classId: id as string, code: code as string };
}

/** What a bench's browser keeps of joining. */
export const benchCookies = (response: Awaited<ReturnType<Asking["get"]>>): Asker => ({
  cookies: Object.fromEntries(response.cookies.map(({ name, value }) => [name, value])),
});
