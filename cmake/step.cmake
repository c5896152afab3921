# Can towershaft-step be built?  Only where OpenCASCADE is; nothing else needs it, and a build
# without it says so.

option(TS_STEP "Build towershaft-step, the writer of STEP files, where OpenCASCADE is found" ON)

# ts_step_find(): sets TS_OPENCASCADE and TS_OPENCASCADE_INCLUDE, or says what is missing.
function(ts_step_find)
    find_path(TS_OPENCASCADE_INCLUDE STEPCAFControl_Writer.hxx PATH_SUFFIXES opencascade)
    set(libraries)
    foreach(part IN ITEMS TKXDESTEP TKSTEP TKSTEPAttr TKSTEP209 TKSTEPBase TKXSBase TKXCAF TKLCAF
                          TKCAF TKCDF TKBin TKBool TKBO TKPrim TKShHealing TKTopAlgo TKGeomAlgo
                          TKBRep TKGeomBase TKG3d TKG2d TKMath TKernel)
        find_library(TS_OPENCASCADE_${part} ${part})
        mark_as_advanced(TS_OPENCASCADE_${part})
        if(NOT TS_OPENCASCADE_${part})
            message(STATUS "towershaft-step is left out: no ${part} of OpenCASCADE is here")
            return()
        endif()
        list(APPEND libraries "${TS_OPENCASCADE_${part}}")
    endforeach()
    if(NOT TS_OPENCASCADE_INCLUDE)
        message(STATUS "towershaft-step is left out: no headers of OpenCASCADE are here")
        return()
    endif()
    set(TS_OPENCASCADE "${libraries}" PARENT_SCOPE)
endfunction()

include(CheckLanguage)
if(TS_STEP)
    ts_step_find()
    check_language(CXX)
endif()
if(TS_OPENCASCADE AND CMAKE_CXX_COMPILER)
    enable_language(CXX)
    file(GLOB step_sources CONFIGURE_DEPENDS src/apps/step/*.cpp)
    function(ts_modelling name)
        add_executable(${name} ${ARGN})
        target_include_directories(${name} SYSTEM PRIVATE "${TS_OPENCASCADE_INCLUDE}")
        target_compile_features(${name} PRIVATE cxx_std_17)
        target_compile_options(${name} PRIVATE -O2 -Wall -Wextra -Wpedantic -Wshadow -Werror
            "-ffile-prefix-map=${CMAKE_SOURCE_DIR}/=")
        target_link_libraries(${name} PRIVATE ${TS_OPENCASCADE})
    endfunction()
    ts_modelling(towershaft-step ${step_sources})
    target_link_libraries(towershaft-step PRIVATE PkgConfig::JANSSON)
    install(TARGETS towershaft-step)
    # Reads the files back for the tests.
    if(TS_TESTS)
        ts_modelling(towershaft-step-measure tests/solid/measure_step.cpp)
    endif()
endif()
