// Keeps the last answer of a costly function in the worker: questions come as copies, so that they are
// known again by what they say.

/** The function, reckoning anew only where the key is not that of the question before. */
export function keepLast<Q, A>(key: (question: Q) => string, reckon: (question: Q) => A) {
  let last: { readonly key: string; readonly answer: A } | null = null;
  return (question: Q): A => {
    const own = key(question);
    if (last?.key !== own) last = { key: own, answer: reckon(question) };
    return last.answer;
  };
}
