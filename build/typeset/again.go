package typeset

import (
	"bytes"
	"sync"

	"noonbook/build/drawing"
)

// Remembering returns the same words, which write a drawing or a sheet of a result once and
// copy it where another page shows it again. They are for one school: what they remember is
// as long there as they are.
func (w *Words) Remembering() *Words {
	remembering := *w
	remembering.written = &sync.Map{}
	return &remembering
}

// A writtenKey is a drawing or a sheet, by its address in the result, and the measure that
// it was written in.
type writtenKey struct {
	what      any
	customary bool
}

// once appends what write appends for a drawing or a sheet, or what it did before.
func (w *Words) once(dst []byte, what any, write func(dst []byte) []byte) []byte {
	if w.written == nil {
		return write(dst)
	}
	key := writtenKey{what, w.customary}
	if before, ok := w.written.Load(key); ok {
		return append(dst, before.([]byte)...)
	}
	begin := len(dst)
	dst = write(dst)
	w.written.Store(key, bytes.Clone(dst[begin:]))
	return dst
}

// appendDrawingOnce is AppendDrawing for a drawing of a result.
func (w *Words) appendDrawingOnce(dst []byte, d *drawing.Drawing) []byte {
	return w.once(dst, d, func(dst []byte) []byte { return w.AppendDrawing(dst, *d) })
}
