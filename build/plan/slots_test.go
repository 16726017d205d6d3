package plan

// slotsEverywhere is a lesson with a slot in everything that can hold one.
const slotsEverywhere = "```lesson\ntitle = \"Slots\"\n```\n\n" + `{class-facts.school} is at {place-facts.latitude}, {place-facts.longitude}.
Its hours run {dial-table.turns}; "{class-facts.school}" ({class-facts.pupils}) has{class-facts.groups}{class-facts.pupils}groups.

# One {class-facts.pupils}

## Two of {class-facts.groups} groups

### Three *of* {class-facts.school}

Six and {class-facts.pupils}
---

###### Deep {class-facts.groups}

*{class-facts.pupils}* and **{class-facts.groups} of** them, ***both {place-facts.latitude}***, *a **{class-facts.pupils}** b*\
after a break {class-facts.groups}

A [link to {class-facts.school}](2-other.md "The other"), [within](#one), [far](https://example.org/a?b=c&d=e), <https://example.org>,
[a heading *{class-facts.pupils}*](2-other.md#hello), ![A leaf & a stalk](art/leaf.svg "A title"), [![leaf](art/leaf.svg)](2-other.md).

Braces \{not.a.slot\} and ` + "`{code.span}`" + ` and \*stars\*; entities &amp; &lt;b&gt; &copy;; a < b > c & d.

| {class-facts.school} | right {class-facts.pupils} | middle |
|:-----|------:|:------:|
| {class-facts.groups} | **{class-facts.pupils}** | a \| b |
| [x](2-other.md) | ![leaf](art/leaf.svg) | |

- tight {class-facts.pupils}
- tight *{class-facts.groups}*
  - nested {class-facts.pupils}
    1. deeper {class-facts.groups}
    2. deepest

7. begins at seven, {class-facts.pupils}

   with a second paragraph {class-facts.groups}

   > quoted in a list {class-facts.school}
   >
   > | a | {class-facts.pupils} |
   > |---|---:|
   > | b | {class-facts.groups} |

8. eight

> quoted {class-facts.pupils}
>
> - a list in a quote {class-facts.groups}
>
>   with more
>
> > twice {class-facts.school}

***

` + "```python\ncode := \"{class-facts.pupils}\" // <b> & c\n```" + `

    indented {class-facts.pupils}

` + "````caution\nNever *look* at the Sun, {class-facts.pupils} of you.\n\n- nor through {class-facts.groups} lenses\n\n## A heading in it\n\n```text\ncode in a caution\n```\n````" + `

The step after the caution.

` + "```compute class-facts\n```" + `

1. An item that asks

   ` + "````answer lines=2\n   It is {class-facts.pupils}.\n\n   ```text\n   {class-facts.pupils}\n   ```\n\n   ```caution\n   A caution for staff {class-facts.groups}\n   ```\n   ````" + `

   and goes on.

2. Another

   ~~~caution
   In a list: {class-facts.school}
   ~~~

> ` + "```staff\n> Quoted for staff, {class-facts.pupils}\n>\n> | a |\n> |---|\n> | {class-facts.groups} |\n> ```" + `
>
> Still quoted.
>
> ` + "```caution\n> In a quote {class-facts.pupils}\n> ```" + `

` + "```answer\nWithout lines {class-facts.pupils}\n```" + `

` + "~~~~staff\nA note, with\n\n~~~answer lines=9\nan answer in it {class-facts.groups}\n~~~\n\n```compute class-facts\nclass.pupils = 5\n```\n\n### Its heading\n~~~~" + `

` + "`````caution\nBefore\n\n````answer lines=3\nan answer in a caution\n````\n\nAfter {class-facts.pupils}\n`````" + `

The last words.
`

const oracleSettings = `[unit]
title = "Oracle"
[school]
name = "S"
latitude = -33.5
longitude = 151.25
time_zone = "Australia/Sydney"
[class]
pupils = 28
group_size = 3
[term]
first_day = 2027-05-03
last_day = 2027-05-28
`
