package plan

import (
	"bufio"
	"bytes"
	"html"
	"strconv"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/renderer"
	markdown "github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/util"
)

// inFile is how goldmark writes a picture in a file of its own.
var inFile = imageFunc()

type imageOf struct{ write renderer.NodeRendererFunc }

func (i *imageOf) Register(kind ast.NodeKind, f renderer.NodeRendererFunc) {
	if kind == ast.KindImage {
		i.write = f
	}
}

func imageFunc() renderer.NodeRendererFunc {
	var i imageOf
	markdown.NewRenderer().RegisterFuncs(&i)
	return i.write
}

// picture writes a picture of a lesson: a hand-drawn one in the theme's classes as part of
// the page, another as its file. The ids of each have a prefix that no heading and no
// other picture of the page has.
func (r *lessonRenderer) picture(w util.BufWriter, src []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	n := node.(*ast.Image)
	lead := r.from.Picture(n)
	if lead.Inset == nil || !entering {
		shown := *n // the tree is not ours alone
		shown.Destination = lead.Target
		if lead.Width > 0 {
			shown.SetAttributeString("width", []byte(strconv.Itoa(lead.Width)))
			shown.SetAttributeString("height", []byte(strconv.Itoa(lead.Height)))
		}
		return inFile(w, src, &shown, entering)
	}
	r.draft.pictures++
	prefix := "nb-p" + strconv.Itoa(r.draft.pictures) + "-"
	_, err := w.Write(lead.Inset.Append(nil, prefix, inLetters(n.Title), altText(n, src)))
	return ast.WalkSkipChildren, err
}

// altText is the alternative text of a picture in plain letters.
func altText(n ast.Node, src []byte) string {
	text := ""
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		switch c := c.(type) {
		case *ast.Text:
			text += inLetters(c.Segment.Value(src))
			if c.SoftLineBreak() || c.HardLineBreak() {
				text += " "
			}
		case *ast.String:
			text += inLetters(c.Value)
		default:
			text += altText(c, src)
		}
	}
	return text
}

// inLetters resolves what Markdown writes with backslashes and character references.
func inLetters(s []byte) string {
	var out bytes.Buffer
	buffer := bufio.NewWriter(&out)
	markdown.DefaultWriter.Write(buffer, s)
	_ = buffer.Flush() // into memory
	return html.UnescapeString(out.String())
}
