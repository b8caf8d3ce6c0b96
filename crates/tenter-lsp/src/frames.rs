//! Messages on the wire: a header with a length, a blank line, so many bytes.

use std::io::{self, BufRead, Write};

/// Longer messages are not read, bytes.
const LONGEST: usize = 256 << 20;
/// Longer header lines are none, bytes.
const LONGEST_HEADER: u64 = 8 << 10;

/// What came over the wire.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Frame {
    /// A message.
    Message(Vec<u8>),
    /// Bytes that are no message; reading goes on behind them.
    Broken(&'static str),
}

/// Reads one frame; none at the end of the input.
pub(crate) fn read(input: &mut impl BufRead) -> io::Result<Option<Frame>> {
    let mut length = None;
    let mut any = false;
    loop {
        let mut line = Vec::new();
        if io::Read::take(&mut *input, LONGEST_HEADER).read_until(b'\n', &mut line)? == 0 {
            return Ok(None);
        }
        let text = String::from_utf8_lossy(&line);
        let text = text.trim_end_matches(['\r', '\n']);
        if text.is_empty() {
            if !any {
                continue;
            }
            break;
        }
        any = true;
        if let Some((name, value)) = text.split_once(':')
            && name.trim().eq_ignore_ascii_case("content-length")
        {
            length = value.trim().parse::<usize>().ok();
        }
    }
    match length {
        None => Ok(Some(Frame::Broken("a header without Content-Length"))),
        Some(length) if length > LONGEST => {
            io::copy(&mut io::Read::take(&mut *input, length as u64), &mut io::sink())?;
            Ok(Some(Frame::Broken("a message that is too long")))
        }
        Some(length) => {
            let mut body = Vec::new();
            let got = io::Read::read_to_end(&mut io::Read::take(&mut *input, length as u64), &mut body)?;
            Ok((got == length).then_some(Frame::Message(body)))
        }
    }
}

/// Writes one message.
pub(crate) fn write(output: &mut impl Write, body: &[u8]) -> io::Result<()> {
    write!(output, "Content-Length: {}\r\n\r\n", body.len())?;
    output.write_all(body)?;
    output.flush()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn all(mut bytes: &[u8]) -> Vec<Frame> {
        let mut found = Vec::new();
        while let Some(frame) = read(&mut bytes).unwrap() {
            found.push(frame);
        }
        found
    }

    #[test]
    fn what_is_written_is_read() {
        let mut bytes = Vec::new();
        write(&mut bytes, b"{}").unwrap();
        write(&mut bytes, "é小".as_bytes()).unwrap();
        assert_eq!(all(&bytes), [Frame::Message(b"{}".to_vec()), Frame::Message("é小".as_bytes().to_vec())]);
    }

    #[test]
    fn other_headers_and_case_do_not_matter() {
        let bytes = b"content-type: x\r\nCONTENT-LENGTH:2\r\n\r\n{}";
        assert_eq!(all(bytes), [Frame::Message(b"{}".to_vec())]);
    }

    #[test]
    fn a_broken_header_costs_itself_only() {
        let bytes = b"Nonsense\r\n\r\nContent-Length: 2\r\n\r\n{}";
        assert_eq!(all(bytes), [Frame::Broken("a header without Content-Length"), Frame::Message(b"{}".to_vec())]);
    }

    #[test]
    fn a_message_cut_off_is_none() {
        assert_eq!(all(b"Content-Length: 9\r\n\r\n{}"), []);
    }
}
