package typeset_test

import (
	"strings"
	"testing"
)

// How quotes and apostrophes are set, and what stays on one line.
//
// English, from memory: The Chicago Manual of Style, 17th edition: 6.115 (curved marks),
// 6.117 (’90s, ’tis, rock ’n’ roll, by an apostrophe and not an opening quote), 13.30
// (single quotes within double ones), 10.66 (5′ 3″ with primes), 7.19 (possessives of
// plurals); The Canadian Style, 1.23 (a number and its symbol are not parted).
// French, from memory: Lexique des règles typographiques en usage à l’Imprimerie
// nationale, 2002, « Guillemets » (spaces within, that do not break), « Nombres » (groups
// of three, with a space that does not break), « Abréviations d’unités »; Office québécois
// de la langue française, « Guillemets anglais » (within guillemets).
// ~ is a space that does not break, _ a narrow one.
func TestTypeset(t *testing.T) {
	for _, c := range []struct{ language, typed, want string }{
		{"en", `She said, "It's noon."`, `She said, “It’s noon.”`},
		{"en", `"Is it 'noon' or not?" he asked.`, `“Is it ‘noon’ or not?” he asked.`},
		{"en", `"'Tis noon," she said.`, `“’Tis noon,” she said.`},
		{"en", `He read "the word 'noon'".`, `He read “the word ‘noon’”.`},
		{"en", `the '90s, class of '27, rock 'n' roll`, `the ’90s, class of ’27, rock ’n’ roll`},
		{"en", `the pupils' dials and James's`, `the pupils’ dials and James’s`},
		{"en", `in the 1990's`, `in the 1990’s`},
		{"en", `a plate of 5' 3" or 5'3"`, `a plate of 5′ 3″ or 5′3″`},
		{"en", `46° 05' 30" north`, `46° 05′ 30″ north`},
		{"en", `a 3" lens`, `a 3″ lens`},
		{"en", `"the answer is 5" and "6"`, `“the answer is 5” and “6”`},
		{"en", `"it is 5' 3" long"`, `“it is 5′ 3″ long”`},
		{"en", `('noon'), ["noon"], "Stop!"—"Go!"`, `(‘noon’), [“noon”], “Stop!”—“Go!”`},
		{"en", `"Wait—" he said`, `“Wait—” he said`},
		{"en", `a " alone and ' alone`, `a " alone and ' alone`},
		{"en", `“Set” and ‘set’, it’s «so»`, `“Set” and ‘set’, it’s «so»`},
		{"en", `{1}'s "{2}", {3} mm`, `{1}’s “{2}”, {3}~mm`},
		{"en", `naïve l'été`, `naïve l’été`},

		{"fr", `Il dit "midi".`, `Il dit «_midi_».`},
		{"fr", `"Il a lu "midi" hier"`, `«_Il a lu “midi” hier_»`},
		{"fr", `« il dit "oui" »`, `«_il dit “oui”_»`},
		{"fr", `L'ombre d'aujourd'hui, qu'{1}`, `L’ombre d’aujourd’hui, qu’{1}`},
		{"fr", `Quoi ? Oui ! Non ; si : "midi" ?`, `Quoi_? Oui_! Non_; si_: «_midi_»_?`},
		{"fr", `9:10 et http://a.b`, `9:10 et http://a.b`},
		{"fr", `5' 3", 46° 05' 30"`, `5′ 3″, 46° 05′ 30″`},
		{"fr", `'midi'`, `‘midi’`},
		{"fr", `100 %, 5 $`, `100_%, 5~$`},

		{"en", `a bar of 100 mm, 2.5 m off`, `a bar of 100~mm, 2.5~m off`},
		{"en", "at 30 km/s or 5\nmm.", "at 30~km/s or 5~mm."},
		{"en", `3 mornings, 5 min, 20 metres`, `3 mornings, 5~min, 20 metres`},
		{"en", `Grade 6 in May; lesson 3`, `Grade~6 in May; lesson~3`},
		{"en", `13 April, April 13, May I`, `13~April, April~13, May I`},
		{"en", `at 9:10 a.m. or 1 p.m.`, `at 9:10~a.m. or 1~p.m.`},
		{"en", `46.1° north, 46° and north`, `46.1°~north, 46° and north`},
		{"en", `12 000 and 12,000 and 1 234 567`, `12_000 and 12,000 and 1_234_567`},
		{"en", `in 2027 300 pupils, 3.5 100, lesson 3 100`, `in 2027 300 pupils, 3.5 100, lesson~3 100`},
		{"en", `1 1/2 cups, no. 5, p. 7, so no 5`, `1~1/2 cups, no.~5, p.~7, so no~5`},
		{"en", `no number mm, 5 °C, 12 m²`, `no number mm, 5~°C, 12~m²`},
		{"en", `7 `, `7 `},
		{"fr", `le 13 avril, le 1er mai, à 13 h 20, leçon 3`, `le 13~avril, le 1er~mai, à 13~h~20, leçon~3`},
		{"fr", `du 26 au 30, du {1} au {2}`, `du 26 au 30, du {1} au {2}`},
		{"fr", `la 6e année, 64,8° ouest, 1 h 28 min`, `la 6e année, 64,8°~ouest, 1~h~28~min`},
	} {
		w := language(t, c.language, false)
		want := strings.NewReplacer("~", "\u00a0", "_", "\u202f").Replace(c.want)
		got := w.Typeset(c.typed)
		if got != want {
			t.Errorf("%s: %q becomes %q, want %q", c.language, c.typed, got, want)
		}
		if again := w.Typeset(got); again != got {
			t.Errorf("%s: %q becomes %q when it is set again", c.language, got, again)
		}
	}
}

// In HTML what is beside a quote is looked up across tags, to the end of the block; code
// and attributes are left alone.
func TestTypesetMarkup(t *testing.T) {
	for _, c := range []struct{ language, typed, want string }{
		{"en", `<p>"<em>Noon</em>," she said, <b>"now</b>"</p>`, `<p>“<em>Noon</em>,” she said, <b>“now</b>”</p>`},
		{"en", `<p><em>"Noon"</em> <a href="it's">it's</a></p>`, `<p><em>“Noon”</em> <a href="it's">it’s</a></p>`},
		{"en", `<p>"open</p><p>5" and "so"</p>`, `<p>“open</p><p>5″ and “so”</p>`},
		{"en", `<p><code>it's</code>'s "<code>"</code>" x</p>`, `<p><code>it's</code>’s “<code>"</code>” x</p>`},
		{"en", `<pre>5 mm "a"<b>'</b></pre><kbd>'</kbd><samp>"</samp><script>'a'</script><style>'b'</style>`, `<pre>5 mm "a"<b>'</b></pre><kbd>'</kbd><samp>"</samp><script>'a'</script><style>'b'</style>`},
		{"en", `<td>it&#39;s &quot;5&quot; &#34;6&#34; &amp;</td>`, `<td>it’s “5” “6” &amp;</td>`},
		{"en", `<p title="5 mm 'x'">5 <b>mm</b>, <b>9:10</b> a.m.</p>`, `<p title="5 mm 'x'">5~<b>mm</b>, <b>9:10</b>~a.m.</p>`},
		{"en", `<p>"one"<br>"two"</p><li>"</li>`, `<p>“one”<br>“two”</p><li>"</li>`},
		{"en", `<p>Lesson nbabcdefghijklmnopqrstuvwxyz0z, nbabcdefghijklmnopqrstuvwxyz12z mm, "nbabcdefghijklmnopqrstuvwxyz3z"</p>`, `<p>Lesson nbabcdefghijklmnopqrstuvwxyz0z, nbabcdefghijklmnopqrstuvwxyz12z~mm, “nbabcdefghijklmnopqrstuvwxyz3z”</p>`},
		{"en", `<p>never closed <code>"a"`, `<p>never closed <code>"a"`},
		{"fr", `<p title="a : b">L'ombre : « midi » ? 100 %</p><code>a ? b : 'c'</code> oui ! <pre>x : y</pre> l'<b>heure</b> ; l&#39;axe`,
			`<p title="a : b">L’ombre_: «_midi_»_? 100_%</p><code>a ? b : 'c'</code> oui_! <pre>x : y</pre> l’<b>heure</b>_; l’axe`},
		{"fr", `<p>« <em>midi</em> » et <em>"midi"</em> <b>?</b></p>`, `<p>«_<em>midi</em>_» et <em>«_midi_»</em>_<b>?</b></p>`},
	} {
		w := language(t, c.language, false)
		want := strings.NewReplacer("~", "\u00a0", "_", "\u202f").Replace(c.want)
		got := string(w.TypesetMarkup([]byte(c.typed)))
		if got != want {
			t.Errorf("%s: %s\nbecomes %s\nwant    %s", c.language, c.typed, got, want)
		}
		if again := string(w.TypesetMarkup([]byte(got))); again != got {
			t.Errorf("%s: %s\nbecomes %s when it is set again", c.language, got, again)
		}
	}
}

// A line of a words file has its apostrophes turned, and its straight double quotes, which
// are a sample's, kept. Every straight double quote of the words files is one.
func TestWordsKeepSamples(t *testing.T) {
	if got, want := words(t, false).Say("reference.named_how"), `date = "next full Moon"`; !strings.Contains(got, want) {
		t.Errorf("%q lacks %s", got, want)
	}
	if got := words(t, false).Say("room.name"); strings.Contains(got, "'") {
		t.Errorf("straight: %q", got)
	}
}

// A stranger's quotes cost no more time than other letters: half a million of them are set
// within a second or so.
func TestManyQuotes(t *testing.T) {
	for _, piece := range []string{`"`, `'`, `"<em>`, `5" `, `5' `, ` "a`, "5 ", "12 000 ", "<code>", "« "} {
		w := language(t, "fr", false)
		w.TypesetMarkup([]byte("<p>" + strings.Repeat(piece, 100_000)))
	}
}
