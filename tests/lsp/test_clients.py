"""Sessions as real editors begin them: a client library that knows what each editor can take, and complains of any
answer that does not keep to that.

    bash tests/lsp/run path/to/tenter lsp
"""

import asyncio
import os
import pathlib
import shlex

import pytest
import pytest_lsp
from lsprotocol import types
from pytest_lsp import ClientServerConfig, LanguageClient, client_capabilities, make_test_lsp_client

COMMAND = shlex.split(os.environ["TENTER_LSP"])
RECIPES = pathlib.Path(__file__).parent.parent / "recipes"
RECIPE = RECIPES / "harbour-dusk.dye"
EDITORS = ["visual_studio_code@1.65", "neovim@0.11", "neovim@0.8", "emacs@29.1"]


def an_editor():
    """A client that also answers what the library leaves to its users: registrations and refreshes."""
    client = make_test_lsp_client()
    for method in (
        types.CLIENT_REGISTER_CAPABILITY,
        types.WORKSPACE_CODE_LENS_REFRESH,
        types.WORKSPACE_INLAY_HINT_REFRESH,
        types.WORKSPACE_SEMANTIC_TOKENS_REFRESH,
    ):
        client.feature(method)(lambda _: None)
    return client


@pytest_lsp.fixture(params=EDITORS, config=ClientServerConfig(server_command=COMMAND, client_factory=an_editor))
async def client(request, lsp_client: LanguageClient, tmp_path):
    folder = tmp_path / "collection é 小"
    folder.mkdir()
    for path in RECIPES.glob("*.dye"):
        (folder / path.name).write_bytes(path.read_bytes())
    lsp_client.folder = folder
    lsp_client.offered = await lsp_client.initialize_session(
        types.InitializeParams(
            capabilities=client_capabilities(request.param),
            process_id=os.getpid(),
            root_uri=folder.as_uri(),
            workspace_folders=[types.WorkspaceFolder(uri=folder.as_uri(), name="collection")],
        )
    )
    yield
    await lsp_client.shutdown_session()


def opened(client, text=None, name=RECIPE.name):
    uri = (client.folder / name).as_uri()
    text = RECIPE.read_text() if text is None else text
    item = types.TextDocumentItem(uri=uri, language_id="dye", version=1, text=text)
    client.text_document_did_open(types.DidOpenTextDocumentParams(text_document=item))
    return uri, text


def place(text, words):
    """The position behind some words, counted in UTF-16 units; the lines used here are plain ASCII up to there."""
    before = text[: text.index(words) + len(words)]
    line = before.count("\n")
    return types.Position(line=line, character=len(before) - before.rfind("\n") - 1)


async def findings(client, uri):
    """The findings of the text as it is now: pulled where the client pulls, else the next that are pushed."""
    if client.offered.capabilities.diagnostic_provider:
        asked = types.DocumentDiagnosticParams(text_document=types.TextDocumentIdentifier(uri=uri))
        return (await client.text_document_diagnostic_async(asked)).items
    client.diagnostics.pop(uri, None)
    while uri not in client.diagnostics:
        await asyncio.wait_for(client.wait_for_notification("textDocument/publishDiagnostics"), 20)
    return client.diagnostics[uri]


@pytest.mark.asyncio
async def test_a_slip_is_told_and_mended(client):
    text = RECIPE.read_text()
    assert "lagoon on rim" in text
    uri, text = opened(client, text.replace("lagoon on rim", "lagon on rim"))
    found = await findings(client, uri)
    assert [str(item.code) for item in found] == ["unknown-name"]
    document = types.TextDocumentIdentifier(uri=uri)
    context = types.CodeActionContext(diagnostics=list(found))
    asked = types.CodeActionParams(text_document=document, range=found[0].range, context=context)
    actions = await client.text_document_code_action_async(asked)
    fix = next(action for action in actions if action.kind == types.CodeActionKind.QuickFix)
    if fix.edit is None:
        fix = await client.code_action_resolve_async(fix)
    changes = fix.edit.changes or {edit.text_document.uri: edit.edits for edit in fix.edit.document_changes}
    (edits,) = changes.values()
    assert [edit.new_text for edit in edits] == ["lagoon"]
    change = types.TextDocumentContentChangePartial(range=edits[0].range, text="lagoon")
    version = types.VersionedTextDocumentIdentifier(uri=uri, version=2)
    client.text_document_did_change(types.DidChangeTextDocumentParams(text_document=version, content_changes=[change]))
    assert list(await findings(client, uri)) == []


@pytest.mark.asyncio
async def test_everything_that_is_offered_is_answered(client):
    uri, text = opened(client)
    await findings(client, uri)
    document = types.TextDocumentIdentifier(uri=uri)
    here = place(text, "sprinkle 4 g/piece lag")
    at = {"text_document": document, "position": here}
    whole = types.Range(start=types.Position(line=0, character=0), end=types.Position(line=999, character=0))
    hover = await client.text_document_hover_async(types.HoverParams(**at))
    assert "lagoon" in hover.contents.value
    completion = await client.text_document_completion_async(types.CompletionParams(**at))
    items = completion if isinstance(completion, list) else completion.items
    assert any(item.label == "lagoon" for item in items)
    definition = await client.text_document_definition_async(types.DefinitionParams(**at))
    assert definition[0].range.start.line == text[: text.index("dye lagoon")].count("\n")
    found = types.ReferenceContext(include_declaration=True)
    references = await client.text_document_references_async(types.ReferenceParams(context=found, **at))
    assert len(references) == text.count("lagoon")
    symbols = await client.text_document_document_symbol_async(types.DocumentSymbolParams(text_document=document))
    assert symbols[0].name == "Harbour Dusk"
    folds = await client.text_document_folding_range_async(types.FoldingRangeParams(text_document=document))
    assert len(folds) > 5
    hints = await client.text_document_inlay_hint_async(types.InlayHintParams(text_document=document, range=whole))
    assert any("24 g" in hint.label for hint in hints)
    tokens = await client.text_document_semantic_tokens_full_async(types.SemanticTokensParams(text_document=document))
    assert len(tokens.data) % 5 == 0 and len(tokens.data) > 500
    lenses = await client.text_document_code_lens_async(types.CodeLensParams(text_document=document))
    assert lenses
    options = types.FormattingOptions(tab_size=2, insert_spaces=True)
    edits = await client.text_document_formatting_async(
        types.DocumentFormattingParams(text_document=document, options=options)
    )
    assert list(edits) == []
    rename = await client.text_document_rename_async(types.RenameParams(new_name="harbour blue", **at))
    touched = rename.changes or {edit.text_document.uri: edit.edits for edit in rename.document_changes}
    assert sum(len(edits) for edits in touched.values()) == text.count("lagoon")


@pytest.mark.asyncio
async def test_a_panel_gets_its_totals(client):
    uri, text = opened(client)
    assert set(client.offered.capabilities.execute_command_provider.commands) >= {"tenter.totals", "tenter.benchSheet"}
    position = place(text, "sprinkle 4 g/piece lag")
    argument = {"uri": uri, "position": {"line": position.line, "character": position.character}}
    told = await client.workspace_execute_command_async(
        types.ExecuteCommandParams(command="tenter.totals", arguments=[argument])
    )
    told = told if isinstance(told, dict) else told._asdict()
    assert told["title"] == "Harbour Dusk" and told["line"] == position.line + 1
    assert "lagoon" in told["text"] and "<h2>" in told["html"]
    sheet = await client.workspace_execute_command_async(
        types.ExecuteCommandParams(command="tenter.benchSheet", arguments=[{"uri": uri}])
    )
    sheet = sheet if isinstance(sheet, dict) else sheet._asdict()
    assert sheet["markdown"].startswith("# Harbour Dusk")


@pytest.mark.asyncio
async def test_columns_are_those_that_were_agreed(client):
    """Behind é, a wide character and one outside the first plane, an edit lands where it is meant."""
    encoding = client.offered.capabilities.position_encoding or types.PositionEncodingKind.Utf16
    name = "é小😀 bath"
    text = f"mix {name}\n  1 L      water\n\nsteps\n  soak     tees in {name} for 5 min\n"
    uri, _ = opened(client, text, "wide.dye")
    width = {
        types.PositionEncodingKind.Utf8: len(name.encode()),
        types.PositionEncodingKind.Utf16: len(name.encode("utf-16-le")) // 2,
        types.PositionEncodingKind.Utf32: len(name),
    }[encoding]
    position = types.Position(line=0, character=5)
    document = types.TextDocumentIdentifier(uri=uri)
    found = await client.text_document_document_highlight_async(
        types.DocumentHighlightParams(text_document=document, position=position)
    )
    columns = [(it.range.start.line, it.range.start.character, it.range.end.character) for it in found]
    assert columns == [(0, 4, 4 + width), (4, 19, 19 + width)]
