/* model/syntax_fault.c: where and why could the YAML parser not go on? */
#include "model/syntax_fault.h"

#include <stdio.h>
#include <string.h>

typedef struct wording {
    const char *part; /* of the parser's own message, as libfyaml 0.7.12 has it */
    const char *code;
    const char *says;
    const char *expected;
} wording;

/* The first that fits is taken, so the narrower ones stand first. */
static const wording wordings[] = {
    {"without a closing", "open-bracket", "this bracket is not closed", "its closing bracket"},
    {"extra closing", "stray-bracket", "a bracket closes here that was not opened", NULL},
    {"missing comma", "missing-comma", "a comma is missing between two entries",
     "a comma after each entry but the last"},
    {"with invalid comma", "stray-comma", "a comma stands here without an entry before it", NULL},
    {"flow sequence with invalid", "stray-comma", "a comma stands here without an entry before it",
     NULL},
    {"without closing quote", "open-quote", "this quote is not closed", "its closing quote"},
    {"trailing content", "after-quote", "text follows a closed quote",
     "the whole value inside of the quotes"},
    {"invalid escape", "escape", "this escape does not exist in double quotes",
     "\\\\ for a backslash, \\\" for a quote"},
    {"invalid hex escape", "escape", "this escape does not exist in double quotes",
     "\\\\ for a backslash, \\\" for a quote"},
    {"surrogate", "escape", "this escape does not stand for a character", NULL},
    {"nested block mapping", "second-colon", "a second colon and blank stand in this value",
     "the value in quotes, or a record on lines of its own"},
    {"same line as previous", "second-colon", "a second key stands on this line",
     "each key on a line of its own, or all of them in braces"},
    {"plain scalar cannot start", "needs-quotes", "a value cannot begin with this sign",
     "the value in quotes"},
    {"tab", "tab", "a tab stands where only blanks may", "blanks"},
    {"invalid multiline", "indentation", "the value above goes on here, and then a colon follows",
     "the indentation of the keys above it"},
    {"indent", "indentation", "this line is indented wrongly",
     "the indentation of its neighbours, or brackets' contents further in than their key"},
    {"value after mapping", "missing-colon", "a value stands where a key was due",
     "a key and a colon, such as teeth: 61"},
    {"find expected", "missing-colon", "a key was due here, or a dash",
     "a key and a colon, or a dash, as on the lines above"},
    {"end of block sequence", "missing-dash", "a value stands where a dash was due",
     "a dash and a blank before each item"},
    {"block sequence", "stray-dash", "a dash may not stand here",
     "a list on lines of its own below its key"},
    {"block entry", "stray-dash", "a dash may not stand here",
     "a list on lines of its own below its key"},
    {"comment", "comment", "a comment needs a blank before its sign here", NULL},
    {"document", "second-document", "a sign of a document's end stands inside of it",
     "one document a file"},
    {"':'", "stray-colon", "a colon may not stand here", NULL},
    {"mapping", "stray-colon", "a key may not stand here",
     "a key at the indentation of its neighbours"},
};

#define WORDING_COUNT (sizeof wordings / sizeof wordings[0])

static const wording other = {"", "yaml", "this is not well-formed YAML",
                              "keys and values as in docs/drive-file.md"};

static const wording *wording_of(const char *message)
{
    for (size_t i = 0; i < WORDING_COUNT; i++) {
        if (strstr(message, wordings[i].part) != NULL)
            return &wordings[i];
    }
    return &other;
}

/* A comma that is missing where a line begins may as well be the end of the brackets. */
static bool is_comma_or_end(const wording *words, ts_open_bracket opened, uint32_t line)
{
    return strcmp(words->code, "missing-comma") == 0 && opened.line > 0 && opened.line < line;
}

void ts_diagnose_syntax(ts_diagnostics *list, const char *message, ts_open_bracket opened,
                        uint32_t line, uint32_t column)
{
    const wording *words    = message != NULL ? wording_of(message) : &other;
    const bool     open     = words == &wordings[0] && opened.line > 0;
    const char    *expected = words->expected;
    char           both[160]; /* two numbers of ten digits at most */
    if (is_comma_or_end(words, opened, line)) {
        (void)snprintf(both, sizeof both,
                       "a comma at the end of the entry before, or %s there, for the %s opened at "
                       "%u:%u is not closed yet",
                       opened.curly ? "}" : "]", opened.curly ? "brace" : "bracket", opened.line,
                       opened.column);
        expected = both;
    }
    ts_diagnose(list, &(ts_diagnostic){.code     = words->code,
                                       .line     = open ? opened.line : line,
                                       .column   = open ? opened.column : column,
                                       .columns  = 1,
                                       .says     = words->says,
                                       .expected = expected});
}
