/* Which YAML library reads the files? */
#include "model/yaml_library.h"

#include <libfyaml.h>

const char *ts_yaml_library_version(void)
{
    return fy_library_version();
}
