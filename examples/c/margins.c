/* Which reserve of a drive is the least, and what happens to it when a face grows by 2 mm?
 *
 *   cc margins.c $(pkg-config --cflags --libs towershaft) -o margins
 *   ./margins bizjet.yaml drive/hp/box/input/face '17 mm'
 *
 * Preliminary design aid: see ts_caution().
 */
#include <towershaft/study.h>

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct text {
    char  *bytes;
    size_t length;
} text;

static int keep(void *context, const char *bytes, size_t length)
{
    text *to    = context;
    char *grown = realloc(to->bytes, to->length + length + 1);
    if (grown == NULL)
        return 1;
    memcpy(grown + to->length, bytes, length);
    to->bytes = grown;
    to->length += length;
    to->bytes[to->length] = '\0';
    return 0;
}

static int show(void *context, const char *bytes, size_t length)
{
    return fwrite(bytes, 1, length, context) != length;
}

static text load(const char *path)
{
    text  all = {NULL, 0};
    char  some[4096];
    FILE *file = fopen(path, "rb");
    for (size_t got; file != NULL && (got = fread(some, 1, sizeof some, file)) > 0;)
        if (keep(&all, some, got) != 0)
            break;
    if (file != NULL)
        fclose(file);
    return all;
}

/* Solves the drive, says its open finding with the least margin, and returns its verdict. */
static int judge(const char *name, const text *file)
{
    const ts_study_options options = {.today = INT32_MIN};
    const ts_sink          errors  = {show, stderr};
    ts_study              *study   = NULL;
    int                    code    = 3;
    if (ts_study_open(NULL, &study) != TS_OK)
        return code;
    if (ts_study_read(study, name, file->bytes, file->length, &options) != TS_OK) {
        ts_study_write_messages(study, false, 100, &errors);
        code = 2;
    } else {
        double least = INFINITY;
        for (size_t i = 0; i < ts_study_finding_count(study); i++) {
            const ts_finding_view one = ts_study_finding(study, i);
            if (!(one.margin < least))
                continue;
            least = one.margin;
            printf("%+.1f %%  %s  %s\n    %s\n", 100.0 * one.margin, one.rule, one.address,
                   one.says);
        }
        code = ts_study_verdict(study) == TS_HOLDS ? 0 : 1;
        printf("%s: %s\n", name, code == 0 ? "holds" : "does not hold");
    }
    ts_study_close(study);
    return code;
}

/* The file with one value changed and every other byte as it was. */
static bool change(const char *name, const text *file, const char *address, const char *value,
                   text *to)
{
    const ts_sink sink  = {keep, to};
    const ts_sink err   = {show, stderr};
    ts_study     *study = NULL;
    if (ts_study_open(NULL, &study) != TS_OK)
        return false;
    const ts_status status =
        ts_study_set_bytes(study, name, file->bytes, file->length, address, value, &sink);
    if (status != TS_OK)
        ts_study_write_messages(study, false, 100, &err);
    ts_study_close(study);
    return status == TS_OK;
}

int main(int count, char **words)
{
    if (count != 2 && count != 4) {
        fprintf(stderr, "usage: margins FILE [ADDRESS VALUE]\n");
        return 2;
    }
    puts(ts_caution());
    text file = load(words[1]), changed = {NULL, 0};
    int  code = file.bytes == NULL ? 2 : judge(words[1], &file);
    if (count == 4 && code < 2)
        code = change(words[1], &file, words[2], words[3], &changed)
                   ? judge("with the change", &changed)
                   : 2;
    free(changed.bytes);
    free(file.bytes);
    return code;
}
