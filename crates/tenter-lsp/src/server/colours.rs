//! Colours of dyes.

use tenter_features::colours;
use tower_lsp::jsonrpc::Result;
use tower_lsp::lsp_types::*;

use crate::convert;
use crate::server::Server;

impl Server {
    pub(super) fn answer_document_color(&self, params: DocumentColorParams) -> Result<Vec<ColorInformation>> {
        let Some((view, doc)) = self.doc(&params.text_document.uri) else { return Ok(Vec::new()) };
        let part = |byte: u8| f32::from(byte) / 255.0;
        let found = colours::colours(&doc.file).into_iter().map(|colour| {
            let [red, green, blue] = colour.rgb;
            ColorInformation {
                range: convert::range(&doc.file, &colour.range, view.encoding),
                color: Color { red: part(red), green: part(green), blue: part(blue), alpha: 1.0 },
            }
        });
        Ok(found.collect())
    }

    pub(super) fn answer_color_presentation(&self, params: ColorPresentationParams) -> Result<Vec<ColorPresentation>> {
        let Some((view, doc)) = self.doc(&params.text_document.uri) else { return Ok(Vec::new()) };
        let range = convert::bytes(&doc.file, params.range, view.encoding);
        let part = |share: f32| (share.clamp(0.0, 1.0) * 255.0).round() as u8;
        let rgb = [params.color.red, params.color.green, params.color.blue].map(part);
        let label = colours::written(&doc.file, &range, rgb);
        let told = label.map(|label| ColorPresentation {
            text_edit: Some(TextEdit { range: params.range, new_text: label.clone() }),
            label,
            additional_text_edits: None,
        });
        Ok(told.into_iter().collect())
    }
}
