// Where a mix or a layout is used: one place is gone to, several are listed.
import * as vscode from "vscode";
import type { Location } from "vscode-languageclient";
import type { LanguageClient } from "vscode-languageclient/node";

type Converter = LanguageClient["protocol2CodeConverter"];

/** Shows places as the server tells them; false when there is nothing to show. */
export async function showPlaces(converter: Converter, told: unknown): Promise<boolean> {
  const places = Array.isArray(told) ? told.filter(isLocation).map((place) => converter.asLocation(place)) : [];
  const from = vscode.window.activeTextEditor;
  if (places.length < 2 || from === undefined) {
    return false;
  }
  await vscode.commands.executeCommand("editor.action.peekLocations", from.document.uri, from.selection.active, places, "peek");
  return true;
}

function isLocation(it: unknown): it is Location {
  return typeof it === "object" && it !== null && "uri" in it && typeof it.uri === "string" && "range" in it;
}
