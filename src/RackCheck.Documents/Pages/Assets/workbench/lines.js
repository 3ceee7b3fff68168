// Lines of a basket: what an answer says to add, to exchange and to leave out, done in the basket.
import { partsOf } from "./json.js";

const verbs = { missingLines: "Add", replaceLines: "Exchange for", excessLines: "Leave out" };

// A change of an answer by its pointer, such as /missingLines/2.
export function changeAt(answer, pointer) {
  const [list, index] = partsOf(pointer);
  return { list, entry: answer[list][index] };
}

export const titleOf = ({ list, entry }) => `${verbs[list]} ${entry.quantity} × ${entry.partNumber}`;

// Lines keep their places while changes are made, so that the pointers of the answer hold; then those that are empty are taken out.
export function withChanges(basket, changes) {
  const lines = basket.lines.map((own) => ({ ...own }));
  const added = changes.filter(({ list }) => list !== "excessLines").map(({ entry: { line, partNumber, quantity } }) => {
    const options = line && lines[partsOf(line).at(-1)].options;
    return { partNumber, quantity, ...(options ? { options } : {}) };
  });
  for (const { entry: { line, quantity } } of changes.filter(({ list }) => list !== "missingLines")) lines[partsOf(line).at(-1)].quantity -= quantity;
  for (const own of added) {
    const same = own.options ? null : lines.find((line) => line.partNumber === own.partNumber && !line.options);
    if (same) same.quantity += own.quantity;
    else lines.push(own);
  }
  return { ...basket, lines: lines.filter((own) => own.quantity > 0) };
}
