/* model/yaml_library.h: which YAML library reads the files? */
#ifndef TS_MODEL_YAML_LIBRARY_H
#define TS_MODEL_YAML_LIBRARY_H

const char *ts_yaml_library_version(void);

#endif
